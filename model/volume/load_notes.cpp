// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/load_notes.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/volume/mean.h"

namespace spoilbook {
namespace {

constexpr double quartz_t_m3 = 2.65;

class Noting {
 public:
    explicit Noting(std::string where) : where_(std::move(where)) {}

    void note(std::string what) { notes.push_back({where_, std::move(what)}); }

    /// Readings of a column that fit their table only as centimetres.
    void centimetres(const std::string& column, const std::vector<double>& readings_m,
                     const LinearTable& table) {
        if (table.empty()) return;
        for (const double reading : readings_m) {
            if (reading <= table.greatest_x() || !table.at(reading / 100)) continue;
            note(
                fmt::format("{} {:g} m is beyond the barge's table: typed in centimetres?", column, reading));
            return;
        }
    }
    void apart(const std::vector<double>& dips_m, const LinearTable& table) {
        if (table.empty() || dips_m.size() < 2) return;
        const auto [least, most] = std::minmax_element(dips_m.begin(), dips_m.end());
        if (*most - *least <= (table.greatest_x() - table.least_x()) / 2) return;
        note(fmt::format("dips from {:g} to {:g} m lie apart by over half of the ullage table", *least,
                         *most));
    }

    Notes notes;

 private:
    std::string where_;
};

void note_readings(const BargeTables& tables, const Load& load, Noting& noting) {
    noting.centimetres("dips_m", load.dips_m, tables.hopper_m3);
    noting.centimetres("top_dips_m", load.top_dips_m, tables.hopper_m3);
    noting.centimetres("light_draughts_m", load.light_draughts_m, tables.displacement_t);
    noting.centimetres("full_draughts_m", load.full_draughts_m, tables.displacement_t);
    noting.apart(load.dips_m, tables.hopper_m3);
    if (!load.dips_m.empty() && !load.top_dips_m.empty() && mean_of(load.top_dips_m) > mean_of(load.dips_m)) {
        noting.note("the water on the spoil reads lower than the spoil");
    }
}

void note_density(const MethodResult& result, Noting& noting) {
    for (const Fact& fact : result.facts) {
        if (fact.name != "hopper_density_t_m3" || fact.value <= quartz_t_m3) continue;
        noting.note(
            fmt::format("weight and dips make {:.2f} t/m³ of the hopper, heavier than quartz", fact.value));
    }
}

}  // namespace

Notes load_notes(const LoadIndex& index, const Load& load, const LoadFigures& figures) {
    Noting noting("load " + load.load);
    for (const LeftOut& left_out : figures.left_out)
        noting.note(fmt::format("no figure by {}: {}", method_name(left_out.method), left_out.why));
    if (const BargeTables* tables = index.tables_of(load.barge)) note_readings(*tables, load, noting);
    const Barge* barge = index.season().barges.find(load.barge);
    for (const MethodResult& result : figures.methods) {
        note_density(result, noting);
        if (result.hopper_m3 && load.left_before_m3.value_or(0) > result.hopper_m3->value) {
            noting.note(fmt::format("{:g} m³ left in the hopper before is more than the {:.0f} m³ by {}",
                                    *load.left_before_m3, result.hopper_m3->value,
                                    method_name(result.method)));
        }
        if (barge == nullptr || !barge->capacity_m3 || !result.hopper_m3) continue;
        if (result.hopper_m3->value - 2 * result.hopper_m3->u() <= *barge->capacity_m3) continue;
        noting.note(fmt::format("{:.0f} hopper m³ by {} is over {}'s capacity of {:g} m³",
                                result.hopper_m3->value, method_name(result.method), barge->name,
                                *barge->capacity_m3));
    }
    for (const Agreement& pair : figures.agreements) {
        if (!pair.disagree()) continue;
        noting.note(fmt::format("{} and {} disagree about {}: E_n {:.1f}", method_name(pair.a),
                                method_name(pair.b), measure_name(pair.measure), pair.e_n));
    }
    return std::move(noting.notes);
}

}  // namespace spoilbook
