// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/icon.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QIconEngine>
#include <QPainter>
#include <QSvgRenderer>

#include "forms/shared/paper_style.h"

static void take_in_icons() {
    Q_INIT_RESOURCE(icons);
}

namespace spoilbook::form {
namespace {

QByteArray drawing(const QString& name) {
    take_in_icons();
    QFile file(QStringLiteral(":/spoilbook/icons/%1.svg").arg(name));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void draw(QPainter& painter, const QRectF& place, QByteArray svg, const QColor& colour) {
    QSvgRenderer renderer(svg.replace("#000", colour.name().toLatin1()));
    renderer.render(&painter, place);
}

// Draws on demand, so that a change of palette needs no reloading and any scale is sharp.
class ToneEngine : public QIconEngine {
 public:
    ToneEngine(QString name, Tone tone) : name_(std::move(name)), svg_(drawing(name_)), tone_(tone) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
        const Palette palette = palette_in_use();
        const int side = std::min(rect.width(), rect.height());
        QRect square(0, 0, side, side);
        square.moveCenter(rect.center());
        draw(*painter, square, svg_, palette[mode == QIcon::Disabled ? Tone::quiet : tone_]);
    }
    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap picture(size);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        paint(&painter, QRect(QPoint(0, 0), size), mode, state);
        return picture;
    }
    QString iconName() override { return name_; }
    bool isNull() override { return svg_.isEmpty(); }
    QIconEngine* clone() const override { return new ToneEngine(*this); }

 private:
    QString name_;
    QByteArray svg_;
    Tone tone_;
};

}  // namespace

QIcon icon(const QString& name, Tone tone) {
    return QIcon(new ToneEngine(name, tone));
}

QPixmap icon_picture(const QString& name, const QColor& colour, int side, double ratio) {
    QPixmap picture(QSize(side, side) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    draw(painter, QRectF(0, 0, side, side), drawing(name), colour);
    return picture;
}

QStringList icon_names() {
    take_in_icons();
    QStringList names = QDir(QStringLiteral(":/spoilbook/icons")).entryList(QDir::Files, QDir::Name);
    for (QString& name : names)
        name.chop(4);
    return names;
}

}  // namespace spoilbook::form
