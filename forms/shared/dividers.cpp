// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/dividers.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPainter>
#include <QPainterPath>

#include "forms/shared/icon.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int tab_height = 7 * grid;
constexpr int icon_side = 24;
constexpr double slant = 10;

// Cut off at the upper corners, as card dividers are.
QPainterPath outline(const QRectF& r) {
    QPainterPath path(r.bottomLeft());
    path.lineTo(r.left(), r.top() + slant);
    path.lineTo(r.left() + slant, r.top());
    path.lineTo(r.right() - slant, r.top());
    path.lineTo(r.right(), r.top() + slant);
    path.lineTo(r.bottomRight());
    return path;
}

}  // namespace

Divider::Divider(const QString& icon_name, const QString& title, const QString& reader, QWidget* parent)
    : QAbstractButton(parent), icon_name_(icon_name), reader_(reader) {
    setText(title);
    setCheckable(true);
    setFocusPolicy(Qt::StrongFocus);
    setFont(type_font(Step::strong, Weight::semibold));
    setAccessibleName(title);
    setAccessibleDescription(reader);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

QSize Divider::sizeHint() const {
    const int words = std::max(QFontMetrics(font()).horizontalAdvance(text()),
                               QFontMetrics(type_font(Step::small)).horizontalAdvance(reader_));
    return {words + icon_side + 5 * grid, tab_height};
}

QSize Divider::minimumSizeHint() const {
    return {QFontMetrics(font()).horizontalAdvance(text()) + icon_side + 4 * grid, tab_height};
}

bool Divider::shows_reader() const {
    return QFontMetrics(type_font(Step::small)).horizontalAdvance(reader_) + icon_side + 4 * grid <= width();
}

void Divider::enterEvent(QEnterEvent*) {
    update();
}

void Divider::leaveEvent(QEvent*) {
    update();
}

void Divider::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    // The divider that is turned to stands higher and runs into its sheet; the others stand behind.
    const QRectF r = QRectF(rect()).adjusted(0.5, isChecked() ? 2.5 : 7.5, -0.5, isChecked() ? 1 : 0);
    painter.setBrush(tones[isChecked() ? Tone::surface : Tone::raised]);
    painter.setPen(QPen(tones[isChecked() || underMouse() ? Tone::edge : Tone::line], 1));
    painter.drawPath(outline(r));
    if (isChecked()) {
        painter.setPen(QPen(tones[Tone::accent], 3));
        painter.drawLine(QPointF(r.left() + slant, r.top() + 0.5), QPointF(r.right() - slant, r.top() + 0.5));
    } else {
        painter.setPen(QPen(tones[Tone::edge], 1));
        painter.drawLine(QPointF(0, height() - 0.5), QPointF(width(), height() - 0.5));
    }
    const QRect inside = r.toRect().adjusted(2 * grid, 2, -grid, -2);
    const QRect icon_place(inside.left(), inside.center().y() - icon_side / 2, icon_side, icon_side);
    form::icon(icon_name_, isChecked() ? Tone::accent : Tone::quiet).paint(&painter, icon_place);
    QRect words = inside.adjusted(icon_side + grid + 2, 0, 0, 0);
    painter.setPen(tones[isChecked() ? Tone::text : Tone::quiet]);
    painter.setFont(font());
    if (!shows_reader()) {
        painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft, text());
    } else {
        const int upper = words.height() * 11 / 20;
        painter.drawText(words.adjusted(0, 0, 0, upper - words.height()), Qt::AlignBottom | Qt::AlignLeft,
                         text());
        painter.setFont(type_font(Step::small));
        painter.setPen(tones[Tone::quiet]);
        painter.drawText(words.adjusted(0, upper, 0, 0), Qt::AlignTop | Qt::AlignLeft, reader_);
    }
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(tones[Tone::accent], 2));
        painter.drawRoundedRect(QRectF(inside).adjusted(-half_grid, 3, 0, -3), 3, 3);
    }
}

Dividers::Dividers(QWidget* parent)
    : QWidget(parent), row_(new QHBoxLayout(this)), group_(new QButtonGroup(this)) {
    row_->setContentsMargins(0, 0, 0, 0);
    row_->setSpacing(half_grid);
    row_->addStretch();
    setAccessibleName(tr("Desks"));
    group_->setExclusive(true);
    connect(group_, &QButtonGroup::idToggled, this, [this](int id, bool on) {
        if (on) emit turned(id);
    });
}

void Dividers::set_desks(const std::vector<Desk>& desks) {
    for (QAbstractButton* old : group_->buttons()) {
        group_->removeButton(old);
        delete old;
    }
    int index = 0;
    for (const Desk& desk : desks) {
        auto* divider = new Divider(desk.icon, desk.title, desk.reader, this);
        divider->setToolTip(tr("%1 (Ctrl+%2)").arg(desk.title).arg(index + 1));
        row_->insertWidget(index, divider);
        group_->addButton(divider, index++);
    }
}

void Dividers::set_current(int index) {
    if (QAbstractButton* divider = group_->button(index)) divider->setChecked(true);
}

int Dividers::current() const {
    return group_->checkedId();
}

}  // namespace spoilbook::form
