// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/column_widths.h"

#include <algorithm>
#include <cstddef>

namespace spoilbook::print {
namespace {

double share_of(const ColumnWish& wish) {
    return wish.weight > 0 ? wish.weight : 1;
}

// Gives `spare` to the columns by `share`.
void give(std::vector<double>& widths, const std::vector<double>& shares, double spare) {
    double total = 0;
    for (const double share : shares) {
        total += share;
    }
    for (std::size_t i = 0; i < widths.size(); ++i) {
        widths[i] += total > 0 ? spare * shares[i] / total : spare / static_cast<double>(widths.size());
    }
}

// Gives `spare` in rounds, each column its share but no more than it wants: whoever wants little is served in
// full, and one long remark does not starve its neighbours.
void serve(std::vector<double>& widths, const std::vector<ColumnWish>& wishes, double spare) {
    for (std::size_t round = 0; round < wishes.size() && spare > 0; ++round) {
        double shares = 0;
        for (std::size_t i = 0; i < wishes.size(); ++i) {
            shares += widths[i] < wishes[i].natural ? share_of(wishes[i]) : 0;
        }
        const double unit = shares > 0 ? spare / shares : 0;
        for (std::size_t i = 0; i < wishes.size(); ++i) {
            const double want = std::max(0.0, wishes[i].natural - widths[i]);
            const double gets = std::min(want, unit * share_of(wishes[i]));
            widths[i] += gets;
            spare -= gets;
        }
    }
}

}  // namespace

double sum_of(const std::vector<ColumnWish>& wishes, double ColumnWish::*member) {
    double total = 0;
    for (const ColumnWish& wish : wishes) {
        total += wish.*member;
    }
    return total;
}

std::vector<double> column_widths(const std::vector<ColumnWish>& wishes, double available) {
    const double least = sum_of(wishes, &ColumnWish::least);
    const double natural = sum_of(wishes, &ColumnWish::natural);
    std::vector<double> widths;
    std::vector<double> shares;
    if (natural <= available) {
        const bool weighted = sum_of(wishes, &ColumnWish::weight) > 0;
        for (const ColumnWish& wish : wishes) {
            widths.push_back(wish.natural);
            shares.push_back(weighted ? wish.weight : wish.natural);
        }
        give(widths, shares, available - natural);
    } else if (least <= available) {
        for (const ColumnWish& wish : wishes) {
            widths.push_back(wish.least);
        }
        serve(widths, wishes, available - least);
    } else {
        for (const ColumnWish& wish : wishes) {
            widths.push_back(wish.least * available / least);
        }
    }
    return widths;
}

}  // namespace spoilbook::print
