// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/quantiles.h"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

namespace spoilbook {

double chi_square_above(double x, int dof) {
    return boost::math::cdf(boost::math::complement(boost::math::chi_squared(dof), x));
}

double student_t_quantile(double p, double dof) {
    return boost::math::quantile(boost::math::students_t(dof), p);
}

double normal_quantile(double p) {
    return boost::math::quantile(boost::math::normal(), p);
}

}  // namespace spoilbook
