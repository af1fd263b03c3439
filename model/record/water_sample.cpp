// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/water_sample.h"

namespace spoilbook {

template <>
const Definition<WaterSample>& definition() {
    static const auto d =
        Definition<WaterSample>("sample", "turbidity/samples.csv",
                                "water taken at a site, and what a laboratory found in it")
            .since(3)
            .own_label("id", &WaterSample::sample)
            .ref("site", &WaterSample::site, "site", "the site")
            .instant("time", &WaterSample::time, "when it was taken")
            .number("turbidity", &WaterSample::turbidity, "", 0, 1e6,
                    "as the site's sensor read then, in the site's unit")
            .number("solids_mg_l", &WaterSample::solids_mg_l, "mg/L", 0, 1e6, "suspended solids")
            .text("lab", &WaterSample::lab, "the laboratory and its number")
            .text("by", &WaterSample::by, "who took it");
    return d;
}

}  // namespace spoilbook
