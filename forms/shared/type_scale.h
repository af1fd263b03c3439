// SPDX-License-Identifier: GPL-3.0-or-later
// One type scale and one spacing grid for all screens. Lengths are device-independent: at 200 % all double.
#pragma once

#include <QFont>

namespace spoilbook::form {

/// small 12: captions and heads of columns; body 14; strong 17: sentences and press buttons; title 22;
/// figure 30.
enum class Step { small, body, strong, title, figure };

enum class Weight { regular, semibold };

/// Open Sans from the program's own resources. Its digits are tabular as drawn. Throws std::runtime_error
/// where the program was built without it.
QFont type_font(Step step, Weight weight = Weight::regular);

/// The grid: everything stands on multiples of eight, small things on half of it.
inline constexpr int grid = 8;
inline constexpr int half_grid = grid / 2;

/// What a finger in a glove hits: no press of the barge desk is lower.
inline constexpr int finger = 48;

}  // namespace spoilbook::form
