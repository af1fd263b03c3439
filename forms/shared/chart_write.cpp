// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/chart_write.h"

#include <QBuffer>
#include <QChart>
#include <QCoreApplication>
#include <QGraphicsScene>
#include <QImage>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgGenerator>

#include "forms/shared/chart_draw.h"
#include "forms/shared/save_file.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

// A4 across, less margins, in units of 1/96 inch.
constexpr QSize picture_size(1040, 640);
constexpr int head_height = 64;

void paint(QPainter& painter, const ChartData& data, const Palette& tones) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(QRect(QPoint(0, 0), picture_size), tones[Tone::surface]);
    painter.setPen(tones[Tone::text]);
    painter.setFont(type_font(Step::strong, Weight::semibold));
    painter.drawText(QRect(2 * grid, grid, picture_size.width() - 4 * grid, 28), Qt::AlignVCenter,
                     data.title);
    painter.setFont(type_font(Step::body));
    painter.setPen(tones[Tone::quiet]);
    painter.drawText(QRect(2 * grid, 36, picture_size.width() - 4 * grid, 24), Qt::AlignVCenter,
                     data.sentence);
    QGraphicsScene scene;
    QChart* chart = make_chart(data, tones);
    scene.addItem(chart);
    chart->resize(picture_size.width(), picture_size.height() - head_height);
    scene.setSceneRect(chart->rect());
    scene.render(&painter, QRectF(0, head_height, picture_size.width(), picture_size.height() - head_height));
}

QByteArray png(const ChartData& data, const Palette& tones) {
    QImage image(picture_size * 2, QImage::Format_RGB32);
    image.setDevicePixelRatio(2);
    QPainter painter(&image);
    paint(painter, data, tones);
    painter.end();
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes;
}

QByteArray svg(const ChartData& data, const Palette& tones) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setTitle(data.title);
    generator.setDescription(data.sentence);
    generator.setSize(picture_size);
    generator.setViewBox(QRect(QPoint(0, 0), picture_size));
    generator.setResolution(96);
    QPainter painter(&generator);
    paint(painter, data, tones);
    painter.end();
    return bytes;
}

QByteArray pdf(const ChartData& data, const Palette& tones) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setPageLayout(QPageLayout(QPageSize(QPageSize::A4), QPageLayout::Landscape,
                                     QMarginsF(10, 10, 10, 10), QPageLayout::Millimeter));
    writer.setResolution(96 * 10);
    writer.setTitle(data.title);
    QPainter painter(&writer);
    painter.scale(10, 10);
    paint(painter, data, tones);
    painter.end();
    return bytes;
}

}  // namespace

QString write_picture(const ChartData& data, const Palette& tones, const QString& path) {
    if (path.endsWith(QStringLiteral(".png"), Qt::CaseInsensitive)) return write_file(path, png(data, tones));
    if (path.endsWith(QStringLiteral(".svg"), Qt::CaseInsensitive)) return write_file(path, svg(data, tones));
    if (path.endsWith(QStringLiteral(".pdf"), Qt::CaseInsensitive)) return write_file(path, pdf(data, tones));
    return QCoreApplication::translate("ChartFrame", "The file's name must end in .png, .svg, .pdf or .csv.");
}

}  // namespace spoilbook::form
