// SPDX-License-Identifier: GPL-3.0-or-later
// Prints quantiles as the program has them, one a line: name, arguments, value; quantiles.py reads them.
#include <fmt/format.h>

#include "model/volume/quantiles.h"

int main() {
    for (const int dof : {1, 2, 3, 5, 8, 13, 40, 200}) {
        for (const double x : {0.001, 0.5, 1.0, 2.5, 7.81473, 20.0, 60.0, 250.0})
            fmt::print("chi_square {} {} {:.17g}\n", x, dof, spoilbook::chi_square_above(x, dof));
    }
    for (const double dof : {1.0, 2.0, 3.0, 7.5, 16.0, 30.0, 500.0}) {
        for (const double p : {0.005, 0.1, 0.5, 0.9, 0.975, 0.995, 0.9999})
            fmt::print("student_t {} {} {:.17g}\n", p, dof, spoilbook::student_t_quantile(p, dof));
    }
    for (const double p : {0.001, 0.025, 0.5, 0.8, 0.975, 0.99999})
        fmt::print("normal {} 0 {:.17g}\n", p, spoilbook::normal_quantile(p));
}
