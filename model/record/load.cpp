// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/load.h"

namespace spoilbook {

template <>
const Definition<Load>& definition() {
    static const auto d =
        Definition<Load>("load", "loads.csv", "what one barge holds, from empty to full")
            .label("load", &Load::load, "its number")
            .ref("barge", &Load::barge, "barge", "the barge")
            .ref("material", &Load::material, "material", "the material, where it is one")
            .instant("loading_start", &Load::loading_start, "first bucket")
            .instant("loading_end", &Load::loading_end, "full")
            .numbers("dips_m", &Load::dips_m, "m", 0, 50, "ullage dips, coaming down to the spoil")
            .numbers("light_draughts_m", &Load::light_draughts_m, "m", 0, 30,
                     "light: FP FS MP MS AP AS, or FP FS AP AS")
            .allowed({6, 4})
            .numbers("full_draughts_m", &Load::full_draughts_m, "m", 0, 30,
                     "full: FP FS MP MS AP AS, or FP FS AP AS")
            .allowed({6, 4})
            .number("dock_density_t_m3", &Load::dock_density_t_m3, "t/m³", 0.95, 1.1, "water when read full")
            .number("stated_hopper_m3", &Load::stated_hopper_m3, "m³", 0, 20000, "hopper volume as stated")
            .number("stated_in_situ_m3", &Load::stated_in_situ_m3, "m³", 0, 20000, "in-situ volume as stated")
            .number("left_before_m3", &Load::left_before_m3, "m³", 0, 20000,
                    "spoil left in the hopper before")
            .numbers("top_dips_m", &Load::top_dips_m, "m", 0, 50, "dips to the water on top")
            .number("water_on_top_m", &Load::water_on_top_m, "m", 0, 20, "depth of water on the spoil")
            .text("overflow", &Load::overflow, "whether water ran over")
            .text("stated_how", &Load::stated_how, "how the stated volume was known")
            .number("light_density_t_m3", &Load::light_density_t_m3, "t/m³", 0.95, 1.1,
                    "water when read light")
            .text("rejected", &Load::rejected, "why the load was turned down, where it was")
            .text("ground_note", &Load::ground_note, "what the ground was like")
            .ordered("loading_start", "loading_end");
    return d;
}

template <>
const Definition<Tally>& definition() {
    static const auto d =
        Definition<Tally>("tally", "tallies.csv", "buckets counted at a station into a load")
            .own_label("id", &Tally::tally)
            .ref("load", &Tally::load, "load", "the load they went into")
            .ref("station", &Tally::station, "station", "the station they came from")
            .ref("bucket", &Tally::bucket, "bucket", "the bucket, of the shift's dredger", "dredger")
            .number("count", &Tally::count, "buckets", 0, 100000, "how many")
            .ref("shift", &Tally::shift, "shift", "the shift that counted; blank: the station's")
            .ref("material", &Tally::material, "material", "blank: the load's, else the claim's")
            .choice("counted", &Tally::counted, {"pressed", "typed"}, "how it was counted")
            .number("part_buckets", &Tally::part_buckets, "buckets", 0, 1000,
                    "part buckets, added to the count");
    return d;
}

template <>
const Definition<LightReading>& definition() {
    static const auto d =
        Definition<LightReading>("light_reading", "light_readings.csv", "draughts of the empty barge")
            .own_label("id", &LightReading::light_reading)
            .ref("barge", &LightReading::barge, "barge", "the barge")
            .instant("time", &LightReading::time, "when")
            .numbers("draughts_m", &LightReading::draughts_m, "m", 0, 30, "FP FS MP MS AP AS, or FP FS AP AS")
            .allowed({6, 4})
            .number("density_t_m3", &LightReading::density_t_m3, "t/m³", 0.95, 1.1, "density of the water")
            .number("hopper_water_m3", &LightReading::hopper_water_m3, "m³", 0, 20000,
                    "water in the empty hopper")
            .number("fuel_t", &LightReading::fuel_t, "t", 0, 10000, "fuel on board")
            .number("ballast_t", &LightReading::ballast_t, "t", 0, 10000, "ballast on board")
            .text("by", &LightReading::by, "who read");
    return d;
}

}  // namespace spoilbook
