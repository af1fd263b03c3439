// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/paint.h"

#include <QBuffer>
#include <QByteArray>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QPolygonF>
#include <stdexcept>

#include "forms/print/typeface.h"

namespace spoilbook::print {
namespace {

QColor colour_of(Tone tone) {
    switch (tone) {
        case Tone::ink:
            return {0x1b, 0x20, 0x26};
        case Tone::quiet:
            return {0x56, 0x5f, 0x69};
        case Tone::hair:
            return {0xc4, 0xca, 0xd0};
        case Tone::tint:
            return {0xf2, 0xf4, 0xf5};
        case Tone::accent:
            return {0x1d, 0x4f, 0x63};
        case Tone::met:
            return {0x2c, 0x74, 0x5a};
        case Tone::near:
            return {0xa8, 0x6a, 0x12};
        case Tone::passed:
            return {0xa8, 0x30, 0x2b};
    }
    return {};
}

constexpr double unit = units_per_point;

class OpPainter {
 public:
    explicit OpPainter(QPainter& painter) : painter_(painter) {}

    void operator()(const TextOp& op) const {
        painter_.setFont(font_of(op.type));
        painter_.setPen(colour_of(op.type.tone));
        painter_.drawText(QPointF(op.x * unit, op.baseline * unit), op.text);
    }
    void operator()(const RuleOp& op) const {
        painter_.setPen(QPen(colour_of(op.tone), op.thickness * unit, Qt::SolidLine, Qt::FlatCap));
        painter_.drawLine(QPointF(op.x1 * unit, op.y1 * unit), QPointF(op.x2 * unit, op.y2 * unit));
    }
    void operator()(const FillOp& op) const {
        const QRectF box(op.x * unit, op.y * unit, op.width * unit, op.height * unit);
        painter_.fillRect(box, colour_of(op.tone));
    }
    void operator()(const MarkOp& op) const;

 private:
    QPainter& painter_;
};

void OpPainter::operator()(const MarkOp& op) const {
    QRectF box(op.x * unit, op.y * unit, op.size * unit, op.size * unit);
    painter_.setPen(Qt::NoPen);
    switch (op.mark) {
        case Mark::none:
            return;
        case Mark::met:
            painter_.setBrush(colour_of(Tone::met));
            painter_.drawEllipse(box);
            return;
        case Mark::near:
            painter_.setBrush(colour_of(Tone::near));
            painter_.drawPolygon(
                QPolygonF({{box.center().x(), box.top()}, box.bottomRight(), box.bottomLeft()}));
            return;
        case Mark::passed:
            painter_.setBrush(colour_of(Tone::passed));
            painter_.drawRect(box);
            return;
        case Mark::unknown: {
            const double stroke = box.width() / 6;
            painter_.setBrush(Qt::NoBrush);
            painter_.setPen(QPen(colour_of(Tone::quiet), stroke));
            painter_.drawEllipse(box.adjusted(stroke / 2, stroke / 2, -stroke / 2, -stroke / 2));
            return;
        }
    }
}

QPageLayout layout_of(const Page& page) {
    const auto orientation = page.landscape ? QPageLayout::Landscape : QPageLayout::Portrait;
    return {QPageSize(QPageSize::A4), orientation, QMarginsF(0, 0, 0, 0)};
}

}  // namespace

std::string paint_pdf(const std::vector<Page>& pages) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(72 * units_per_point);
        writer.setPageLayout(layout_of(pages.front()));
        QPainter painter;
        if (!painter.begin(&writer)) {
            throw std::runtime_error("Qt cannot begin a PDF");
        }
        for (const Page& page : pages) {
            if (&page != &pages.front()) {
                writer.setPageLayout(layout_of(page));
                writer.newPage();
            }
            for (const Op& op : page.ops) {
                std::visit(OpPainter(painter), op);
            }
        }
        if (!painter.end()) {
            throw std::runtime_error("Qt cannot end a PDF");
        }
    }
    return bytes.toStdString();
}

}  // namespace spoilbook::print
