// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/drawing.h"

#include <QBuffer>
#include <QImage>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include "forms/shared/paper_style.h"
#include "forms/shared/save_file.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

// A4 across, less margins, in units of 1/96 inch.
constexpr QSize page(1040, 640);
constexpr int dots_a_unit = 10;  // of a printed page

}  // namespace

Drawing::Drawing(const QString& title, QWidget* parent) : QWidget(parent), title_(title) {
    setAccessibleName(title);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    if (auto* style = qobject_cast<PaperStyle*>(QApplication::style())) {
        connect(style, &PaperStyle::light_changed, this, qOverload<>(&QWidget::update));
    }
}

void Drawing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    draw(painter, rect(), palette_in_use());
}

void Drawing::draw_page(QPainter& painter) const {
    const Palette tones = Palette::of(Light::day);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(QRect(QPoint(0, 0), page), tones[Tone::surface]);
    painter.setPen(tones[Tone::text]);
    painter.setFont(type_font(Step::strong, Weight::semibold));
    painter.drawText(QRect(2 * grid, 0, page.width() - 4 * grid, 5 * grid), Qt::AlignVCenter, title_);
    draw(painter, QRectF(0, 5 * grid, page.width(), page.height() - 5 * grid), tones);
}

QString Drawing::write(const QString& path) const {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    if (path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)) {
        QImage image(page * 2, QImage::Format_RGB32);
        image.setDevicePixelRatio(2);
        QPainter painter(&image);
        draw_page(painter);
        painter.end();
        image.save(&buffer, "PNG");
    } else if (path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) {
        QSvgGenerator generator;
        generator.setOutputDevice(&buffer);
        generator.setTitle(title_);
        generator.setSize(page);
        generator.setViewBox(QRect(QPoint(0, 0), page));
        generator.setResolution(96);
        QPainter painter(&generator);
        draw_page(painter);
    } else if (path.endsWith(QStringLiteral(".pdf"), Qt::CaseInsensitive)) {
        QPdfWriter writer(&buffer);
        writer.setPageLayout(QPageLayout(QPageSize(QPageSize::A4), QPageLayout::Landscape,
                                         QMarginsF(10, 10, 10, 10), QPageLayout::Millimeter));
        writer.setResolution(96 * dots_a_unit);
        writer.setTitle(title_);
        QPainter painter(&writer);
        painter.scale(dots_a_unit, dots_a_unit);
        draw_page(painter);
    } else {
        return tr("The file's name must end in .png, .svg or .pdf.");
    }
    return write_file(path, bytes);
}

void Drawing::ask_export() {
    save_file(this, tr("Export %1").arg(title_), title_ + QStringLiteral(".png"),
              tr("Picture (*.png);;Drawing (*.svg);;Page (*.pdf)"), [this](const QString& path) {
                  const QString why = write(path);
                  if (why.isEmpty()) {
                      emit exported(path);
                  } else {
                      emit failed(why);
                  }
              });
}

}  // namespace spoilbook::form
