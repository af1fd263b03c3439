// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/survey_bed.h"

#include <algorithm>
#include <cmath>

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
    if (survey.positive == "down" && grid->is_elevation_by_format())
        return Refusal{"grid", named(survey), "positive is down, and its format holds elevations",
                       "give positive: up, or leave it blank"};
    if (!survey.u_m && !survey.s44_order.empty() && !s44_order(survey.s44_order))
        return Refusal{"grid", named(survey), survey.s44_order + " is no order of S-44",
                       "give Exclusive, Special, 1a, 1b or 2, or u_m"};
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

Checked<Done> walk(const SurveyBed& bed, const Area& area, const std::function<bool(const BedStrip&)>& each) {
    const Coverage coverage(area, bed.grid());
    const auto whole = coverage.window();
    if (!whole) return Done{};
    if (whole->size() > most_pixels)
        return Refusal{"grid", "the grid", "the area holds more than 400 million pixels of it",
                       "bring a coarser grid"};
    GridWindow strip = *whole;
    const auto rows = strip_pixels / static_cast<std::size_t>(whole->columns);
    strip.rows = std::max(1, static_cast<int>(rows));
    try {
        for (; strip.row < whole->row + whole->rows; strip.row += strip.rows) {
            strip.rows = std::min(strip.rows, whole->row + whole->rows - strip.row);
            const auto levels = bed.levels(strip);
            const auto shares = coverage.shares(strip);
            if (!each({strip, levels, shares})) break;
        }
    } catch (const BrokenGrid& broken) {
        return Refusal{"grid", "the grid", broken.what(), "bring the file anew"};
    }
    return Done{};
}

bool shows(const SurveyBed& bed, const Area& area) {
    bool shown = false;
    (void)walk(bed, bed.map().on_grid(area), [&](const BedStrip& strip) {
        for (std::size_t i = 0; i < strip.shares.size() && !shown; ++i)
            shown = strip.shares[i] > 0 && !std::isnan(strip.levels_m[i]);
        return !shown;
    });
    return shown;
}

}  // namespace spoilbook
