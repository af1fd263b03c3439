// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/surface_look.h"

#include <cmath>

#include "model/bed/levels_between.h"

namespace spoilbook {

namespace {

/// Past one bound by so much, with so much uncertainty.
struct Past {
    double m = 0, u_m = 0;

    [[nodiscard]] bool is_sure() const { return m > 0 && m >= 2 * u_m; }
    [[nodiscard]] bool is_kept() const { return m <= 0 && -m >= 2 * u_m; }
};

class Looking {
 public:
    Looking(const SurveyBed& bed, const SurveyBed* baseline, const SurfaceBounds& bounds, SurfaceLook& look)
        : bed_(bed), baseline_(baseline), bounds_(bounds), look_(look) {}

    void take(const BedStrip& strip) {
        std::vector<double> before;
        if (bounds_.most_rise_m) before = LevelsBetween(*baseline_).at_middles_of(bed_.grid(), strip.window);
        for (std::size_t i = 0; i < strip.levels_m.size(); ++i) {
            const double level = strip.levels_m[i];
            const double base = before.empty() ? 0 : before[i];
            if (strip.shares[i] == 0 || std::isnan(level)) continue;
            look_.surveyed_m2 += strip.shares[i] * bed_.grid().pixel_m2();
            if (!std::isnan(base)) take(strip, i, level, base);
        }
    }

 private:
    void take(const BedStrip& strip, std::size_t i, double level_m, double base_m) {
        const double m2 = strip.shares[i] * bed_.grid().pixel_m2();
        look_.covered_m2 += m2;
        bool is_past = false, is_kept = true;
        for (const Past& past : all_past(level_m, base_m)) {
            is_past = is_past || (look_.has_u && past.is_sure());
            is_kept = is_kept && look_.has_u && past.is_kept();
            note_worst(strip, i, level_m, past);
        }
        if (is_past)
            look_.past_m2 += m2;
        else if (!is_kept)
            look_.in_doubt_m2 += m2;
    }

    std::vector<Past>& all_past(double level_m, double base_m) {
        all_.clear();
        const auto u = bed_.u_at(level_m);
        if (!u) look_.has_u = false;
        const double u_m = u.value_or(0);
        if (bounds_.lowest_m) all_.push_back({*bounds_.lowest_m - level_m, u_m});
        if (bounds_.highest_m) all_.push_back({level_m - *bounds_.highest_m, u_m});
        if (bounds_.most_rise_m) {
            const auto u_before = baseline_->u_at(base_m);
            if (!u_before) look_.has_u = false;
            all_.push_back({level_m - base_m - *bounds_.most_rise_m, std::hypot(u_m, u_before.value_or(0))});
        }
        return all_;
    }

    void note_worst(const BedStrip& strip, std::size_t i, double level_m, const Past& past) {
        if (look_.worst && past.m <= look_.worst->past_m) return;
        const auto columns = static_cast<std::size_t>(strip.window.columns);
        const std::size_t column = i % columns, row = i / columns;
        const GridPlace middle{strip.window.column + static_cast<double>(column) + 0.5,
                               strip.window.row + static_cast<double>(row) + 0.5};
        look_.worst = {past.m, level_m, past.u_m, bed_.grid().on_map(middle)};
    }

    const SurveyBed& bed_;
    const SurveyBed* baseline_;
    const SurfaceBounds& bounds_;
    SurfaceLook& look_;
    std::vector<Past> all_;  ///< of one pixel
};

}  // namespace

Checked<SurfaceLook> look(const SurveyBed& bed, const SurveyBed* baseline, const Area& area,
                          const SurfaceBounds& bounds) {
    const auto same_map = [&] {
        return (bed.map().is_one_map() && baseline->map().is_one_map()) ||
               bed.grid().map_wkt() == baseline->grid().map_wkt();
    };
    if (bounds.most_rise_m && !same_map())
        return Refusal{"grid", "the baseline", "it is on another map than the survey",
                       "bring both grids on the book's map"};
    const Area on_grid = bed.map().on_grid(area);
    if (on_grid.parts.empty())
        return Refusal{"grid", "the grid", "its map does not reach the place",
                       "bring the grid on the book's map"};
    SurfaceLook look;
    look.area_m2 = area_m2(on_grid);
    Looking looking(bed, baseline, bounds, look);
    const auto walked = walk(bed, on_grid, [&](const BedStrip& strip) {
        looking.take(strip);
        return true;
    });
    if (!walked) return walked.refusals();
    if (look.worst) look.worst->place = bed.map().in_book(look.worst->place);
    return look;
}

}  // namespace spoilbook
