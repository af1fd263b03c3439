// SPDX-License-Identifier: GPL-3.0-or-later
// A state is said by a word, shown by a shape, and coloured only third.
#pragma once

#include <QPainter>
#include <QWidget>

#include "forms/shared/palette.h"

namespace spoilbook::form {

/// clear ● nothing stands against it; attention ▲ look at it; hold ■ something stops it; unknown ◆ cannot
/// tell.
enum class State { clear, attention, hold, unknown };

Tone fill_of(State state);
Tone tint_of(State state);
/// "clear", "attention", "hold", "cannot tell" in the reader's language.
QString word_of(State state);

/// The shape alone, as large as fits into `place`.
void draw_shape(QPainter& painter, const QRectF& place, State state, const Palette& tones);

/// Shape and word on the state's tint.
class StateMark : public QWidget {
    Q_OBJECT

 public:
    explicit StateMark(State state, QWidget* parent = nullptr);

    /// An empty word stands for word_of(state).
    void show_state(State state, const QString& word = {});
    [[nodiscard]] State state() const { return state_; }
    [[nodiscard]] QString word() const { return word_; }
    /// Twice as large, for the one answer that a page is for.
    void set_large(bool large);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
    void paintEvent(QPaintEvent* event) override;

 private:
    [[nodiscard]] int shape_side() const;
    [[nodiscard]] int margin() const;

    State state_;
    QString word_;
    bool large_ = false;
};

}  // namespace spoilbook::form
