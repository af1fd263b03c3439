// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/paper_draw.h"

#include <QAbstractButton>
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QRadioButton>

namespace spoilbook::form {
namespace {

constexpr double corner = 3;

QColor mixed(const QColor& a, const QColor& b, double share_of_b) {
    const auto part = [&](int x, int y) { return static_cast<int>(x + (y - x) * share_of_b); };
    return {part(a.red(), b.red()), part(a.green(), b.green()), part(a.blue(), b.blue())};
}

}  // namespace

bool has_own_ring(const QWidget* widget) {
    if (qobject_cast<const QCheckBox*>(widget) || qobject_cast<const QRadioButton*>(widget)) return false;
    return qobject_cast<const QAbstractButton*>(widget) || qobject_cast<const QComboBox*>(widget) ||
           qobject_cast<const QLineEdit*>(widget);
}

QRectF Paper::inside() const {
    return QRectF(option.rect).adjusted(2.5, 2.5, -2.5, -2.5);
}

void Paper::rounded(const QRectF& place, const QColor& fill, const QColor& stroke, double width) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(fill);
    painter.setPen(stroke.isValid() ? QPen(stroke, width) : QPen(Qt::NoPen));
    painter.drawRoundedRect(place, corner, corner);
    painter.restore();
}

void Paper::ring() const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tones[Tone::accent], 2));
    painter.drawRoundedRect(QRectF(option.rect).adjusted(1, 1, -1, -1), corner + 1, corner + 1);
    painter.restore();
}

void Paper::button(ButtonKind kind) const {
    const bool down = is(QStyle::State_Sunken) || is(QStyle::State_On);
    const bool over = is(QStyle::State_MouseOver) && is(QStyle::State_Enabled);
    const QColor text = tones[Tone::text];
    if (!is(QStyle::State_Enabled)) {
        if (kind != ButtonKind::quiet && kind != ButtonKind::tool) {
            rounded(inside(), Qt::transparent, tones[Tone::line], 1);
        }
        return;
    }
    if (kind == ButtonKind::primary) {
        const QColor fill = tones[Tone::accent];
        rounded(inside(), over || down ? mixed(fill, text, down ? 0.3 : 0.15) : fill, {}, 0);
    } else if (kind == ButtonKind::quiet || kind == ButtonKind::tool || kind == ButtonKind::offer) {
        if (kind == ButtonKind::offer) pencilled();
        if (over || down) rounded(inside(), mixed(tones[Tone::raised], text, down ? 0.16 : 0.06), {}, 0);
    } else {
        const QColor fill = tones[Tone::raised];
        rounded(inside(), over || down ? mixed(fill, text, down ? 0.16 : 0.06) : fill, tones[Tone::edge], 1);
        if (kind == ButtonKind::press && !down) {
            // A heavy lower edge: it reads as a key that goes down.
            const QRectF r = inside();
            painter.fillRect(QRectF(r.left() + 2, r.bottom() - 2, r.width() - 4, 2.5), tones[Tone::edge]);
        }
    }
    if (is(QStyle::State_HasFocus)) ring();
}

void Paper::pencilled() const {
    painter.save();
    painter.setPen(QPen(tones[Tone::edge], 1, Qt::DashLine));
    painter.drawRect(inside());
    painter.restore();
}

void Paper::button_label(const QStyleOptionButton& button, ButtonKind kind) const {
    const bool enabled = is(QStyle::State_Enabled);
    const Tone tone = !enabled ? Tone::quiet : kind == ButtonKind::primary ? Tone::on_accent : Tone::text;
    const int gap = kind == ButtonKind::press ? 12 : 6;
    const bool has_icon = !button.icon.isNull();
    const int icon_width = has_icon ? button.iconSize.width() : 0;
    const QString text = button.fontMetrics.elidedText(
        button.text, Qt::ElideRight, button.rect.width() - icon_width - 2 * gap, Qt::TextShowMnemonic);
    const int text_width = text.isEmpty() ? 0 : button.fontMetrics.size(Qt::TextShowMnemonic, text).width();
    const int all = icon_width + text_width + (has_icon && text_width > 0 ? gap : 0);
    QRect place(button.rect.center().x() - all / 2, button.rect.top(), all, button.rect.height());
    if (has_icon) {
        button.icon.paint(&painter, QRect(place.topLeft(), QSize(icon_width, place.height())),
                          Qt::AlignCenter, enabled ? QIcon::Normal : QIcon::Disabled);
        place.setLeft(place.left() + icon_width + gap);
    }
    painter.setPen(tones[tone]);
    painter.drawText(place.adjusted(0, 0, gap, 0), Qt::AlignVCenter | Qt::AlignLeft | Qt::TextShowMnemonic,
                     text);
}

void Paper::tool_button() const {
    button(ButtonKind::quiet);
}

void Paper::box() const {
    const bool enabled = is(QStyle::State_Enabled) && !is(QStyle::State_ReadOnly);
    rounded(inside(), enabled ? tones[Tone::sunk] : tones[Tone::raised],
            tones[enabled ? Tone::edge : Tone::line], 1);
    // The writing line of a paper form.
    const QRectF r = inside();
    if (enabled)
        painter.fillRect(QRectF(r.left() + 2, r.bottom() - 1, r.width() - 4, 1.5), tones[Tone::edge]);
    if (is(QStyle::State_HasFocus)) ring();
}

void Paper::tick(const QRectF& r, const QColor& colour) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 2.25, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF points[] = {{r.left() + r.width() * 0.22, r.top() + r.height() * 0.53},
                              {r.left() + r.width() * 0.43, r.top() + r.height() * 0.74},
                              {r.left() + r.width() * 0.8, r.top() + r.height() * 0.28}};
    painter.drawPolyline(points, 3);
    painter.restore();
}

void Paper::check_box() const {
    const bool on = is(QStyle::State_On);
    const QRectF r = QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5);
    const Tone edge = is(QStyle::State_Enabled) ? Tone::edge : Tone::line;
    rounded(r, on ? tones[Tone::accent] : tones[Tone::sunk], tones[on ? Tone::accent : edge], 1.5);
    if (on) tick(r, tones[Tone::on_accent]);
}

void Paper::radio() const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF r = QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5);
    painter.setBrush(tones[Tone::sunk]);
    painter.setPen(QPen(tones[is(QStyle::State_On) ? Tone::accent : Tone::edge], 1.5));
    painter.drawEllipse(r);
    if (is(QStyle::State_On)) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(tones[Tone::accent]);
        painter.drawEllipse(r.adjusted(5, 5, -5, -5));
    }
    painter.restore();
}

void Paper::outline(Tone tone) const {
    painter.save();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tones[tone], 1));
    painter.drawRect(QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5));
    painter.restore();
}

void Paper::header() const {
    painter.fillRect(option.rect, tones[Tone::raised]);
    const QRect& r = option.rect;
    painter.fillRect(QRectF(r.left(), r.bottom() - 0.5, r.width(), 1.5), tones[Tone::edge]);
}

void Paper::groove() const {
    rounded(QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5), tones[Tone::raised], tones[Tone::edge], 1);
}

void Paper::progress(const QStyleOptionProgressBar& bar) const {
    if (bar.maximum <= bar.minimum) return;
    const double share = double(bar.progress - bar.minimum) / double(bar.maximum - bar.minimum);
    QRectF r = QRectF(option.rect).adjusted(2, 2, -2, -2);
    r.setWidth(r.width() * std::clamp(share, 0.0, 1.0));
    painter.fillRect(r, tones[Tone::accent]);
}

void Paper::arrow(const QRect& place) const {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const Tone tone = is(QStyle::State_Enabled) ? Tone::text : Tone::quiet;
    painter.setPen(QPen(tones[tone], 1.75, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF c = QRectF(place).center();
    const QPointF points[] = {c + QPointF(-5, -2.5), c + QPointF(0, 2.5), c + QPointF(5, -2.5)};
    painter.drawPolyline(points, 3);
    painter.restore();
}

void Paper::scroll_bar(const QRect& slider) const {
    painter.fillRect(option.rect, tones[Tone::surface]);
    const bool over = is(QStyle::State_MouseOver) || is(QStyle::State_Sunken);
    rounded(QRectF(slider).adjusted(2.5, 2.5, -2.5, -2.5), tones[over ? Tone::quiet : Tone::edge], {}, 0);
}

}  // namespace spoilbook::form
