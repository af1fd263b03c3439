// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QWidget>
#include <array>

#include "forms/barge/load_answer.h"

namespace spoilbook::form {

/// The methods of a load below each other, each with its amounts ± u and how it stands to the one that
/// counts.
class MethodLines : public QWidget {
    Q_OBJECT

 public:
    explicit MethodLines(QWidget* parent);
    void show_answer(const LoadAnswer& answer);

 private:
    struct Line {
        QWidget* all = nullptr;
        QLabel* name = nullptr;
        QLabel* amounts = nullptr;
        StateMark* mark = nullptr;
    };
    static constexpr std::size_t most = 4;  ///< as many as there are methods
    std::array<Line, most> lines_;
    QLabel* none_;
};

}  // namespace spoilbook::form
