// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/survey_bed.h"

#include <algorithm>

#include "model/bed/coverage.h"

namespace spoilbook {

namespace {

constexpr std::size_t strip_pixels = std::size_t{1} << 20;
constexpr std::size_t most_pixels = 400'000'000;

std::string named(const Survey& survey) {
    return "survey " + survey.survey;
}

}  // namespace

Checked<SurveyBed> SurveyBed::open(const Survey& survey, const ByteSource& bytes, const Crs& book) {
    auto grid = BedGrid::open(bytes, named(survey));
    if (!grid) return grid.refusals();
    auto map = GridMap::between(book, *grid, named(survey));
    if (!map) return map.refusals();
    if (survey.positive.empty() && !grid->is_elevation_by_format())
        return Refusal{"grid", named(survey), "it is not recorded which way its numbers grow",
                       "give positive: up for levels, down for depths"};
    SurveyBed bed(std::move(*grid), std::move(*map));
    bed.sign_ = survey.positive == "down" ? -1 : 1;
    bed.offset_m_ = survey.offset_m.value_or(0);
    bed.u_m_ = survey.u_m;
    bed.order_ = s44_order(survey.s44_order);
    return bed;
}

std::vector<double> SurveyBed::levels(const GridWindow& window) const {
    auto levels = grid_.numbers(window);
    for (double& level : levels)
        level = sign_ * level + offset_m_;
    return levels;
}

std::optional<double> SurveyBed::u_at(double level_m) const {
    if (u_m_) return u_m_;
    return order_ ? std::optional(order_->u_m(-level_m)) : std::nullopt;
}

Checked<Done> walk(const SurveyBed& bed, const Area& area, const std::function<void(const BedStrip&)>& each) {
    const Coverage coverage(bed.map().on_grid(area), bed.grid());
    const auto whole = coverage.window();
    if (!whole) return Done{};
    if (whole->size() > most_pixels)
        return Refusal{"grid", "the grid", "the area holds more than 400 million pixels of it",
                       "bring a coarser grid"};
    GridWindow strip = *whole;
    const auto rows = strip_pixels / static_cast<std::size_t>(whole->columns);
    strip.rows = std::max(1, static_cast<int>(rows));
    for (; strip.row < whole->row + whole->rows; strip.row += strip.rows) {
        strip.rows = std::min(strip.rows, whole->row + whole->rows - strip.row);
        const auto levels = bed.levels(strip);
        const auto shares = coverage.shares(strip);
        each({strip, levels, shares});
    }
    return Done{};
}

}  // namespace spoilbook
