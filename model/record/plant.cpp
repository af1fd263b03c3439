// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/plant.h"

namespace spoilbook {

template <>
const Definition<Dredger>& definition() {
    static const auto d =
        Definition<Dredger>("dredger", "plant.json", "an excavator dredger on a spud pontoon")
            .in(FileForm::json, "dredgers")
            .label("name", &Dredger::name, "her name")
            .number("reach_min_m", &Dredger::reach_min_m, "m", 0, 100, "least reach from the slew centre")
            .number("reach_max_m", &Dredger::reach_max_m, "m", 0, 100, "greatest reach from the slew centre")
            .table("reach_table", &Dredger::reach_table, "[depth m, reach m] rows")
            .number("slew_offset_m", &Dredger::slew_offset_m, "m", -200, 200,
                    "slew centre ahead of the pontoon's")
            .number("swing_deg", &Dredger::swing_deg, "°", 0, 180, "swing to either side of the heading");
    return d;
}

template <>
const Definition<Bucket>& definition() {
    static const auto d =
        Definition<Bucket>("bucket", "plant.json", "a bucket of a dredger")
            .in(FileForm::json, "buckets")
            .label("name", &Bucket::name, "its name, unique on its dredger")
            .ref("dredger", &Bucket::dredger, "dredger", "whose bucket it is")
            .number("capacity_m3", &Bucket::capacity_m3, "m³", 0.01, 60, "rated capacity, heaped (ISO 7451)")
            .also_label("dredger");
    return d;
}

template <>
const Definition<Tug>& definition() {
    static const auto d = Definition<Tug>("tug", "plant.json", "a tug")
                              .in(FileForm::json, "tugs")
                              .label("name", &Tug::name, "her name");
    return d;
}

template <>
const Definition<Barge>& definition() {
    static const auto d =
        Definition<Barge>("barge", "plant.json", "a split-hopper barge and her tables")
            .in(FileForm::json, "barges")
            .label("name", &Barge::name, "her name")
            .number("capacity_m3", &Barge::capacity_m3, "m³", 0.1, 20000, "hopper capacity to the coaming")
            .table("ullage_table", &Barge::ullage_table, "[ullage m, hopper m³] rows")
            .table("hydrostatic_table", &Barge::hydrostatic_table,
                   "[draught m, displacement t] rows; a row may go on with TPC t/cm, LCF m (+ forward), MCTC "
                   "t·m/cm")
            .number("hydrostatic_density_t_m3", &Barge::hydrostatic_density_t_m3, "t/m³", 0.95, 1.1,
                    "density the table was made for; blank: the book's water")
            .integer("draught_mean", &Barge::draught_mean, 6, 8,
                     "divisor of the mean of means: 8, or 6 for a box hull")
            .allowed({6, 8})
            .number("ullage_u_m", &Barge::ullage_u_m, "m", 0, 5, "standard uncertainty of one ullage reading")
            .number("draught_u_m", &Barge::draught_u_m, "m", 0, 5,
                    "standard uncertainty of one draught reading")
            .number("lbp_m", &Barge::lbp_m, "m", 1, 300, "length between perpendiculars")
            .added();
    return d;
}

}  // namespace spoilbook
