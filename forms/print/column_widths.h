// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace spoilbook::print {

/// What a column asks for, in one unit of length: `least` holds its widest word, `natural` its widest text
/// (least <= natural), `weight` >= 0 its share of what is left over.
struct ColumnWish {
    double least = 0;
    double natural = 0;
    double weight = 0;
};

/// What the columns ask for together of one member.
double sum_of(const std::vector<ColumnWish>& wishes, double ColumnWish::*member);

/// Widths that add up to `available` > 0. Where all texts fit, what is left over goes by weight, without
/// weights in proportion to `natural`. Where not, each column gets `least`, and the rest goes by weight (1
/// where none is given) to those that want more, none above `natural`. Where not even `least` fits, all
/// shrink in proportion to it.
std::vector<double> column_widths(const std::vector<ColumnWish>& wishes, double available);

}  // namespace spoilbook::print
