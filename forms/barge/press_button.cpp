// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/press_button.h"

#include <QApplication>
#include <QPainter>
#include <QPointer>
#include <QShortcut>
#include <QStyleOptionButton>
#include <algorithm>

#include "forms/shared/button.h"
#include "forms/shared/icon.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/sheet.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int icon_side = 24;

/// A sheet that lies over a press takes its key, be the press on the page or on a sheet below.
bool is_covered(const QWidget& press) {
    const auto sheets = press.window()->findChildren<Sheet*>();
    return std::any_of(sheets.begin(), sheets.end(),
                       [&press](const Sheet* sheet) { return sheet->covers(&press); });
}

}  // namespace

bool PressButton::on_other_sheet(const QWidget* widget) const {
    for (; widget; widget = widget->parentWidget()) {
        if (qobject_cast<const Sheet*>(widget)) return !widget->isAncestorOf(this);
    }
    return false;
}

PressButton::PressButton(const QString& words, const QString& icon_name, const QKeySequence& key,
                         QWidget* parent)
    : QPushButton(parent), shortcut_(new QShortcut(this)), icon_name_(icon_name) {
    setProperty("kind", static_cast<int>(ButtonKind::press));
    setAutoDefault(false);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    // A key that is held down is one press.
    shortcut_->setAutoRepeat(false);
    connect(shortcut_, &QShortcut::activated, this, [this] {
        if (is_covered(*this)) return;
        // What stands in a box is written before the press, as a finger that leaves the box would do.
        const QPointer<QWidget> before = QApplication::focusWidget();
        setFocus(Qt::OtherFocusReason);
        click();
        // A press that opened a sheet gave the keyboard to it, and gets it back when the sheet goes.
        if (before && before->isVisible() && !on_other_sheet(QApplication::focusWidget()))
            before->setFocus(Qt::OtherFocusReason);
    });
    set_words(words);
    set_key(key);
}

void PressButton::set_words(const QString& words) {
    words_ = words;
    setAccessibleName(words);
    updateGeometry();
    update();
}

void PressButton::hear_key(bool hear) {
    shortcut_->setEnabled(hear);
}

void PressButton::set_narrow(const QString& sign, const QString& name) {
    narrow_ = true;
    words_ = sign;
    note_ = key_;
    setAccessibleName(name);
    setToolTip(tr("%1 (%2)").arg(name, key_));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    updateGeometry();
}

void PressButton::set_key(const QKeySequence& key) {
    key_ = key.toString(QKeySequence::NativeText);
    shortcut_->setKey(key);
    setToolTip(key_.isEmpty() ? QString() : tr("%1 (%2)").arg(words_, key_));
    update();
}

void PressButton::set_note(const QString& note) {
    note_ = note;
    setAccessibleDescription(note);
    update();
}

void PressButton::set_due(bool due) {
    if (due == due_) return;
    due_ = due;
    setProperty("kind", static_cast<int>(due ? ButtonKind::primary : ButtonKind::press));
    update();
}

QSize PressButton::sizeHint() const {
    const QFontMetrics strong(type_font(Step::strong, Weight::semibold));
    const QFontMetrics small(type_font(Step::small));
    if (narrow_) return {small.horizontalAdvance(note_) + 3 * grid, finger + half_grid};
    const int words = strong.horizontalAdvance(words_) + small.horizontalAdvance(key_) + icon_side + 6 * grid;
    return {std::max(words, 15 * grid), finger + half_grid};
}

// Never narrower than its words: a cut word is a wrong press at night.
QSize PressButton::minimumSizeHint() const {
    return {std::min(sizeHint().width(), words_width()), sizeHint().height()};
}

int PressButton::words_width() const {
    const QFontMetrics strong(type_font(Step::strong, Weight::semibold));
    const QFontMetrics small(type_font(Step::small));
    return strong.horizontalAdvance(words_) + small.horizontalAdvance(key_) + icon_side + 6 * grid;
}

void PressButton::paintEvent(QPaintEvent*) {
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    option.icon = {};
    QPainter painter(this);
    style()->drawControl(QStyle::CE_PushButtonBevel, &option, &painter, this);
    const Palette& tones = palette_in_use();
    const bool filled = due_ && isEnabled();
    const Tone front = !isEnabled() ? Tone::quiet : filled ? Tone::on_accent : Tone::text;
    const int side = narrow_ ? 2 : grid + half_grid;
    const QRect place = rect().adjusted(side, 0, -side, 0);
    const QPixmap picture = icon_name_.isEmpty()
                                ? QPixmap()
                                : icon_picture(icon_name_, tones[front], icon_side, devicePixelRatioF());
    if (!picture.isNull()) painter.drawPixmap(place.left(), (height() - icon_side) / 2, picture);
    QRect text = place.adjusted(picture.isNull() ? 0 : icon_side + grid, 0, 0, 0);
    painter.setFont(type_font(Step::small));
    painter.setPen(tones[filled || !isEnabled() ? front : Tone::quiet]);
    if (!narrow_) {
        painter.drawText(text, Qt::AlignRight | Qt::AlignVCenter, key_);
        text.setRight(text.right() - painter.fontMetrics().horizontalAdvance(key_) - grid);
    }
    if (!note_.isEmpty()) {
        const QString note = painter.fontMetrics().elidedText(note_, Qt::ElideRight, text.width());
        painter.drawText(text.adjusted(0, height() / 2, 0, -6),
                         (narrow_ ? Qt::AlignHCenter : Qt::AlignLeft) | Qt::AlignVCenter, note);
        text.setBottom(height() / 2 + 3);
    }
    painter.setFont(type_font(Step::strong, Weight::semibold));
    painter.setPen(tones[front]);
    painter.drawText(text, (narrow_ ? Qt::AlignHCenter : Qt::AlignLeft) | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(words_, Qt::ElideRight, text.width()));
}

}  // namespace spoilbook::form
