// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/site.h"

namespace spoilbook {

template <>
const Definition<Claim>& definition() {
    static const auto d =
        Definition<Claim>("claim", "claims.geojson", "a numbered area to be dredged to one target level")
            .in(FileForm::geojson)
            .label("claim", &Claim::claim, "its number")
            .text("name", &Claim::name, "its name")
            .number("target_level_m", &Claim::target_level_m, "m", -200, 50,
                    "level the bed must come down to")
            .number("allowance_m", &Claim::allowance_m, "m", 0, 20, "accepted depth below target")
            .number("batter_h_per_v", &Claim::batter_h_per_v, "", 0, 100,
                    "batter outside the toe line, h per 1 v")
            .ref("material", &Claim::material, "material", "what it is mostly made of")
            .number("planned_in_situ_m3", &Claim::planned_in_situ_m3, "m³", 0, 1e9, "in-situ volume planned")
            .day("planned_start", &Claim::planned_start, "first day planned")
            .day("planned_finish", &Claim::planned_finish, "last day planned")
            .json("geometry", &Claim::geometry, "its outline, Polygon or MultiPolygon")
            .text("crs", &Claim::crs, "the outline's reference system; blank: WGS 84 lon/lat")
            .ordered("planned_start", "planned_finish");
    return d;
}

template <>
const Definition<Ground>& definition() {
    static const auto d =
        Definition<Ground>("ground", "grounds.geojson", "a consented disposal ground")
            .in(FileForm::geojson)
            .label("ground", &Ground::ground, "its name")
            .json("geometry", &Ground::geometry, "its outline, Polygon or MultiPolygon")
            .text("crs", &Ground::crs, "the outline's reference system; blank: WGS 84 lon/lat");
    return d;
}

template <>
const Definition<Cell>& definition() {
    static const auto d =
        Definition<Cell>("cell", "grounds.geojson", "a part of a ground: a cell, or an exclusion")
            .in(FileForm::geojson)
            .label("cell", &Cell::cell, "its name, unique in its ground")
            .ref("ground", &Cell::ground, "ground", "the ground it is part of")
            .choice("kind", &Cell::kind, {"cell", "exclusion"},
                    "cell, or exclusion where nothing may be released")
            .json("geometry", &Cell::geometry, "its outline, Polygon or MultiPolygon")
            .text("crs", &Cell::crs, "the outline's reference system; blank: WGS 84 lon/lat")
            .also_label("ground");
    return d;
}

}  // namespace spoilbook
