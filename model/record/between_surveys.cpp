// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/between_surveys.h"

namespace spoilbook {

template <>
const Definition<Removed>& definition() {
    static const auto d =
        Definition<Removed>("removed", "removed.csv", "what came off a claim's bed between two surveys")
            .since(2)
            .label("removed", &Removed::removed, "its number")
            .ref("before", &Removed::before, "survey", "the survey before")
            .ref("after", &Removed::after, "survey", "the survey after")
            .ref("claim", &Removed::claim, "claim", "the claim")
            .number("removed_in_situ_m3", &Removed::removed_in_situ_m3, "m³", -1e8, 1e8,
                    "by which the bed came down, in situ")
            .number("removed_u_m3", &Removed::removed_u_m3, "m³", 0, 1e8, "its standard uncertainty")
            .number("infill_in_situ_m3", &Removed::infill_in_situ_m3, "m³", -1e8, 1e8,
                    "came or slid in meanwhile and was dug too, in situ")
            .number("infill_u_m3", &Removed::infill_u_m3, "m³", 0, 1e8, "its standard uncertainty")
            .number("outside_in_situ_m3", &Removed::outside_in_situ_m3, "m³", -1e8, 1e8,
                    "in the claim's loads and dug outside it, in situ")
            .number("outside_u_m3", &Removed::outside_u_m3, "m³", 0, 1e8, "its standard uncertainty")
            .text("by", &Removed::by, "who worked it out")
            .text("remarks", &Removed::remarks, "remarks")
            .number("deposited_in_situ_m3", &Removed::deposited_in_situ_m3, "m³", 0, 1e8,
                    "where the bed came up: shown, and part of removed already")
            .added()
            .number("deposited_u_m3", &Removed::deposited_u_m3, "m³", 0, 1e8, "its standard uncertainty")
            .added()
            .number("within_allowance_m3", &Removed::within_allowance_m3, "m³", 0, 1e8,
                    "of removed: below target level, within the allowance, in situ")
            .added()
            .since(3)
            .number("within_allowance_u_m3", &Removed::within_allowance_u_m3, "m³", 0, 1e8,
                    "its standard uncertainty")
            .added()
            .since(3)
            .number("beyond_allowance_m3", &Removed::beyond_allowance_m3, "m³", 0, 1e8,
                    "of removed: deeper than the allowance, in situ")
            .added()
            .since(3)
            .number("beyond_allowance_u_m3", &Removed::beyond_allowance_u_m3, "m³", 0, 1e8,
                    "its standard uncertainty")
            .added()
            .since(3);
    return d;
}

}  // namespace spoilbook
