// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/reading_findings.h"

#include <algorithm>

#include "model/volume/assumptions.h"
#include "model/volume/hydrostatics.h"
#include "model/volume/mean.h"

namespace spoilbook {
namespace {

struct Finder {
    const Load& load;
    const BargeTables* tables;
    const Barge* barge;
    const LoadFigures& figures;
    std::vector<ReadingFinding> found;

    /// The first finding of a column stands.
    void add(const ReadingFinding& finding) {
        const bool known = std::any_of(found.begin(), found.end(), [&](const ReadingFinding& one) {
            return one.column == finding.column;
        });
        if (!known) found.push_back(finding);
    }

    [[nodiscard]] bool left_out(Method method, std::string_view why) const {
        return std::any_of(figures.left_out.begin(), figures.left_out.end(),
                           [&](const LeftOut& out) { return out.method == method && out.why == why; });
    }

    /// `taken_m` is what the table is read at: the mean.
    void outside(std::string_view column, const std::vector<double>& readings_m, double taken_m,
                 const LinearTable& table) {
        if (readings_m.empty() || table.empty()) return;
        const double low = table.least_x();
        const double high = table.greatest_x();
        for (const double reading : readings_m) {
            // A little below the table is a deep reading; twice as deep as it goes is another unit.
            if (reading <= 2 * high || !table.at(reading / 100)) continue;
            return add({column, Oddity::centimetres, reading, low, high});
        }
        if (!table.at(taken_m)) add({column, Oddity::outside_table, taken_m, low, high});
    }

    void dips() {
        if (load.dips_m.empty()) return;
        if (left_out(Method::ullage, obstacle::no_ullage_table))
            return add({"dips_m", Oddity::no_table, 0, 0, 0});
        outside("dips_m", load.dips_m, mean_of(load.dips_m), tables->hopper_m3);
        const auto [least, most] = std::minmax_element(load.dips_m.begin(), load.dips_m.end());
        if (*most - *least > (tables->hopper_m3.greatest_x() - tables->hopper_m3.least_x()) / 2)
            add({"dips_m", Oddity::apart, 0, *least, *most});
    }

    void top_dips() {
        if (load.top_dips_m.empty()) return;
        if (tables) outside("top_dips_m", load.top_dips_m, mean_of(load.top_dips_m), tables->hopper_m3);
        if (!load.dips_m.empty() && mean_of(load.top_dips_m) > mean_of(load.dips_m))
            add({"top_dips_m", Oddity::water_below_spoil, 0, 0, 0});
    }

    void draughts(std::string_view column, const std::vector<double>& marks_m) {
        if (marks_m.empty()) return;
        const auto means = mark_means(marks_m);
        if (!means) return add({column, Oddity::marks_missing, 0, 0, 0});
        if (!tables || tables->displacement_t.empty()) return add({column, Oddity::no_table, 0, 0, 0});
        const double taken_m = mean_draught_m(*means, barge->draught_mean.value_or(8));
        outside(column, marks_m, taken_m, tables->displacement_t);
    }

    void weights() {
        draughts("light_draughts_m", load.light_draughts_m);
        draughts("full_draughts_m", load.full_draughts_m);
        if (left_out(Method::draughts, obstacle::light_heavier)) {
            add({"full_draughts_m", Oddity::light_heavier, 0, 0, 0});
            if (!load.light_draughts_m.empty()) add({"light_draughts_m", Oddity::light_heavier, 0, 0, 0});
        }
        if (left_out(Method::draughts, obstacle::no_light_draughts))
            add({"full_draughts_m", Oddity::no_light, 0, 0, 0});
        if (left_out(Method::draughts, obstacle::no_full_draughts))
            add({"light_draughts_m", Oddity::no_full, 0, 0, 0});
    }

    void amounts() {
        for (const MethodResult& result : figures.methods) {
            if (!result.hopper_m3) continue;
            const double hopper = result.hopper_m3->value;
            if (load.left_before_m3.value_or(0) > hopper)
                add({"left_before_m3", Oddity::left_over, *load.left_before_m3, 0, hopper});
            const bool dipped = result.method == Method::ullage;
            if (!dipped && result.method != Method::stated) continue;
            if (!barge || !barge->capacity_m3) continue;
            if (hopper - 2 * result.hopper_m3->u() > *barge->capacity_m3)
                add({dipped ? "dips_m" : "stated_hopper_m3", Oddity::over_capacity, hopper, 0,
                     *barge->capacity_m3});
        }
    }
};

}  // namespace

std::vector<ReadingFinding> reading_findings(const LoadIndex& index, const Load& load,
                                             const LoadFigures& figures) {
    Finder finder{load, index.tables_of(load.barge), index.season().barges.find(load.barge), figures, {}};
    finder.dips();
    finder.top_dips();
    finder.weights();
    finder.amounts();
    return finder.found;
}

}  // namespace spoilbook
