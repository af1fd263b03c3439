// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

#include "model/bed/survey_bed.h"
#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

/// Numbers from the north row down, each row from the west, as an ESRI ASCII grid; NaN where there is none.
struct MadeGrid {
    double west = 711'640, south = 5'497'370, step_m = 1;
    std::vector<std::vector<double>> rows;

    [[nodiscard]] std::string text() const {
        std::string text = fmt::format(
            "ncols {}\nnrows {}\nxllcorner {:.6f}\nyllcorner {:.6f}\ncellsize {:.6f}\nNODATA_value -9999\n",
            rows.front().size(), rows.size(), west, south, step_m);
        for (const auto& row : rows) {
            for (const double number : row)
                text += std::isnan(number) ? "-9999 " : fmt::format("{:.6f} ", number);
            text += '\n';
        }
        return text;
    }
    /// Part of it, counted in pixels from its south-west corner.
    [[nodiscard]] Ring part(double left, double bottom, double right, double top) const {
        return box(west + left * step_m, south + bottom * step_m, west + right * step_m,
                   south + top * step_m);
    }
};

inline Crs harbour_map() {
    return Crs::from_epsg(32760).value();
}

inline Survey survey_up(double u_m) {
    Survey survey;
    survey.survey = "SV-1";
    survey.positive = "up";
    survey.u_m = u_m;
    return survey;
}

inline SurveyBed bed_of(const MadeGrid& grid, const Survey& survey) {
    const std::string text = grid.text();
    return std::move(SurveyBed::open(survey, HeldBytes(text), harbour_map()).value());
}

}  // namespace spoilbook::test
