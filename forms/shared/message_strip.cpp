// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/message_strip.h"

#include <QAccessible>
#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPainter>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/paper_style.h"

namespace spoilbook::form {
namespace {

constexpr int shape_side = 16;

}  // namespace

MessageStrip::MessageStrip(QWidget* parent)
    : QWidget(parent),
      text_(make_label({}, Step::body, Weight::regular, this)),
      action_(make_button(ButtonKind::plain, {}, {}, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(2 * grid + shape_side + grid, half_grid, grid, half_grid);
    text_->setWordWrap(true);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    row->addWidget(text_, 1);
    row->addWidget(action_);
    QPushButton* close =
        make_button(ButtonKind::tool, tr("Put this message away"), QStringLiteral("close"), this);
    row->addWidget(close);
    connect(close, &QPushButton::clicked, this, &MessageStrip::dismiss);
    connect(action_, &QPushButton::clicked, this, [this] {
        const auto act = act_;
        dismiss();
        if (act) act();
    });
    // Its button would else leave the keyboard with whatever comes next when the strip goes.
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget* from, QWidget* to) {
        if (isAncestorOf(to) && !isAncestorOf(from)) before_ = from;
    });
    hide();
}

void MessageStrip::show_message(Message kind, const QString& text, const QString& action,
                                std::function<void()> act) {
    kind_ = kind;
    text_->setText(text);
    act_ = std::move(act);
    action_->setText(action);
    action_->setAccessibleName(action);
    action_->setVisible(!action.isEmpty());
    setAccessibleName(word_of(state()) + QStringLiteral(": ") + text);
    show();
    update();
    QAccessibleEvent event(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&event);
}

QString MessageStrip::text() const {
    return text_->text();
}

void MessageStrip::dismiss() {
    act_ = nullptr;
    const bool had_keyboard = isAncestorOf(QApplication::focusWidget());
    QWidget* before = before_ && before_->isVisible() ? before_.data() : nullptr;
    if (had_keyboard && before) before->setFocus(Qt::OtherFocusReason);
    hide();
    if (had_keyboard && !before) emit let_go();
}

State MessageStrip::state() const {
    switch (kind_) {
        case Message::done:
            return State::clear;
        case Message::warning:
            return State::attention;
        case Message::error:
            return State::hold;
        case Message::notice:
            break;
    }
    return State::unknown;
}

void MessageStrip::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.fillRect(rect(), tones[tint_of(state())]);
    painter.fillRect(QRect(0, height() - 1, width(), 1), tones[Tone::edge]);
    if (kind_ == Message::notice) {
        painter.fillRect(QRect(2 * grid + 4, height() / 2 - 8, 4, 16), tones[Tone::edge]);
        return;
    }
    draw_shape(painter, QRectF(2 * grid, (height() - shape_side) / 2.0, shape_side, shape_side), state(),
               tones);
}

void MessageStrip::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape) return dismiss();
    QWidget::keyPressEvent(event);
}

}  // namespace spoilbook::form
