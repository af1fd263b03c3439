// SPDX-License-Identifier: GPL-3.0-or-later
// How figures and codes are shown to a reader, before anyone's language: screens, sbk's lines and printed
// pages all go by these, so that they cannot say two things. JSON is never rounded, and keeps its codes.
#pragma once

#include <string>
#include <string_view>

namespace spoilbook {

/// To `decimals` places, away from the better side: used and every uncertainty up, headroom down. A value
/// that is on the step already stays, but for a millionth of the last digit, which sums of thousands of
/// loads lose in binary digits.
double rounded_up(double value, int decimals);
double rounded_down(double value, int decimals);

/// "3574.2 ± 12.1": the value to the nearest, its uncertainty (≥ 0) up. A point, no groups.
std::string with_u(double value, double u, int decimals);

/// A probability of 0 to 1 as it is shown: in percent to one decimal, but never as none or all unless it is.
struct ShownChance {
    char bound = 0;  ///< '<' or '>' before the number, or 0
    double percent = 0;
    int decimals = 1;
};
ShownChance shown_chance(double p);
/// "4.2", "< 0.1", "> 99.9", "0", "100": the percentage with a point, without its sign.
std::string chance_text(double p);

/// A code of JSON as people read it: "cannot_tell" is "cannot tell".
std::string in_words(std::string_view code);

}  // namespace spoilbook
