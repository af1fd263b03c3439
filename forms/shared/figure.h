// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QWidget>

#include "forms/shared/state_mark.h"

namespace spoilbook::form {

/// What a figure says. All texts are ready for reading: rounded, in the reader's language, by one who knows
/// which way a headline must round (used up, headroom down).
struct FigureText {
    QString caption;     ///< "Headroom, this month"
    QString value;       ///< "3 780"; empty: nothing is known, shown as a dash
    QString unit;        ///< "m³"
    QString plus_minus;  ///< "420", without the sign; empty where the value is exact
    QString basis;       ///< "in-situ, by ullage"
};

/// One big number with unit, ± u, basis and caption; read aloud as one sentence.
class Figure : public QWidget {
    Q_OBJECT

 public:
    explicit Figure(QWidget* parent = nullptr);

    void show_figure(const FigureText& text);
    /// A state beside the caption; call without one to take it away.
    void show_state(State state, const QString& word);
    void hide_state();

 private:
    QLabel* caption_;
    QLabel* value_;
    QLabel* unit_;
    QLabel* plus_minus_;
    QLabel* basis_;
    StateMark* mark_;
};

}  // namespace spoilbook::form
