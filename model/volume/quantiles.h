// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace spoilbook {

/// P(χ² ≥ x) of dof > 0 degrees of freedom, for x ≥ 0: how often chance alone would scatter as far.
double chi_square_above(double x, int dof);

/// The value that Student's t of dof > 0 degrees of freedom stays below with probability p, 0 < p < 1.
double student_t_quantile(double p, double dof);

/// The same of the standard normal law.
double normal_quantile(double p);

}  // namespace spoilbook
