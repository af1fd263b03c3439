// SPDX-License-Identifier: GPL-3.0-or-later
// How much of a box is past its bounds, against a plain reckoning pixel by pixel that knows no strips, no
// edges and no files, on beds that RapidCheck makes up.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <algorithm>
#include <cmath>

#include "model/bed/surface_look.h"
#include "tests/unit/bed/grids.h"

namespace spoilbook::test {
namespace {

double millis(int low, int high) {
    return *rc::gen::inRange(low, high) / 1000.0;
}

/// Levels about -9 m, one pixel in eight not surveyed.
MadeGrid any_bed(std::size_t rows, std::size_t columns, double step_m) {
    MadeGrid grid;
    grid.step_m = step_m;
    for (std::size_t r = 0; r < rows; ++r) {
        auto& row = grid.rows.emplace_back();
        for (std::size_t c = 0; c < columns; ++c)
            row.push_back(*rc::gen::inRange(0, 8) == 0 ? NAN : -9 + millis(-500, 500));
    }
    return grid;
}

struct Box {
    double left, bottom, right, top;  ///< m from the grid's south-west corner
};

double overlap(double a, double b, double c, double d) {
    return std::max(0.0, std::min(b, d) - std::max(a, c));
}

struct Reckoned {
    double covered_m2 = 0, past_m2 = 0, in_doubt_m2 = 0;
};

Reckoned plainly(const MadeGrid& bed, const MadeGrid& before, const Box& box, const SurfaceBounds& bounds,
                 double u_m, double u_before_m) {
    Reckoned sum;
    const std::size_t rows = bed.rows.size();
    for (std::size_t r = 0; r < rows; ++r) {
        for (std::size_t c = 0; c < bed.rows[r].size(); ++c) {
            const double west = bed.step_m * static_cast<double>(c);
            const double south = bed.step_m * static_cast<double>(rows - 1 - r);
            const double m2 = overlap(west, west + bed.step_m, box.left, box.right) *
                              overlap(south, south + bed.step_m, box.bottom, box.top);
            const double level = bed.rows[r][c], base = before.rows[r][c];
            const bool blank = std::isnan(level) || (bounds.most_rise_m && std::isnan(base));
            if (m2 == 0 || blank) continue;
            sum.covered_m2 += m2;
            // The bed is taken as low, and as high, as two standard uncertainties let it be.
            const double far = 2 * u_m, rise_far = 2 * std::sqrt(u_m * u_m + u_before_m * u_before_m);
            const auto all = [&](double by, double by_rise) {
                return (!bounds.lowest_m || level + by >= *bounds.lowest_m) &&
                       (!bounds.highest_m || level - by <= *bounds.highest_m) &&
                       (!bounds.most_rise_m || level - base - by_rise <= *bounds.most_rise_m);
            };
            if (!all(far, rise_far))
                sum.past_m2 += m2;
            else if (!all(-far, -rise_far))
                sum.in_doubt_m2 += m2;
        }
    }
    return sum;
}

std::optional<double> perhaps(double value) {
    return *rc::gen::arbitrary<bool>() ? std::optional(value) : std::nullopt;
}

}  // namespace

TEST_CASE("for every bed, box and bound", "[bed][property]") {
    rc::prop("what is past it and what is in doubt are those of the pixels, one by one", [] {
        const auto rows = *rc::gen::inRange<std::size_t>(1, 9),
                   columns = *rc::gen::inRange<std::size_t>(1, 9);
        const double step_m = *rc::gen::element(0.5, 1.0, 2.5);
        const MadeGrid bed = any_bed(rows, columns, step_m), before = any_bed(rows, columns, step_m);
        const double left = millis(-3000, 15'000), bottom = millis(-3000, 15'000);
        const Box box{left, bottom, left + millis(1, 15'000), bottom + millis(1, 15'000)};
        SurfaceBounds bounds;
        // Of a thousandth between two thousandths: no level lies on a bound.
        bounds.lowest_m = perhaps(-9.00025 + millis(-400, 100));
        bounds.highest_m = perhaps(-8.99975 + millis(-100, 400));
        bounds.most_rise_m = perhaps(0.00025 + millis(0, 600));
        const double u_m = millis(0, 150), u_before_m = millis(0, 150);
        const auto bed_read = bed_of(bed, survey_up(u_m)),
                   before_read = bed_of(before, survey_up(u_before_m));
        const Area area = area_of({spoilbook::test::box(bed.west + box.left, bed.south + box.bottom,
                                                        bed.west + box.right, bed.south + box.top)});
        const auto look = spoilbook::look(bed_read, &before_read, area, bounds).value();
        const Reckoned sum = plainly(bed, before, box, bounds, u_m, u_before_m);
        RC_ASSERT(std::abs(look.covered_m2 - sum.covered_m2) < 1e-6);
        RC_ASSERT(std::abs(look.past_m2 - sum.past_m2) < 1e-6);
        RC_ASSERT(std::abs(look.in_doubt_m2 - sum.in_doubt_m2) < 1e-6);
    });
}

}  // namespace spoilbook::test
