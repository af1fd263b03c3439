// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/unit/folder/folder_support.h"

#include <stdexcept>

namespace spoilbook::test {

namespace {

void write_plant(TempFolder& folder) {
    folder.with("harbour.json", R"({"name": "Marram Harbour", "authority": "Marram Harbour Board",
        "works": "Ferry Basin", "epsg": 32760, "zone": "Pacific/Auckland", "water_density_t_m3": 1.025,
        "vertical_datum": "chart datum", "campaigns": [{"name": "first", "from": "2025-08-04", "to": "2026-07-01"}]})");
    folder.with("people.csv", "name,role\nAna,skipper\nBram,tug_master\n");
    folder.with("materials.csv",
                "material,situ_density_t_m3,grain_density_t_m3,bulking_factor,bulking_factor_u,fill_factor,"
                "fill_factor_u\nsand,1.95,2.65,1.24,0.05,0.9,0.04\n");
    folder.with("plant.json", R"({"dredgers": [{"name": "Heron", "reach_min_m": 6, "reach_max_m": 15.5,
        "reach_table": [[0, 15.5], [10, 13]], "slew_offset_m": 16.5, "swing_deg": 90,
        "buckets": [{"name": "general", "capacity_m3": 4.2}, {"name": "ripping", "capacity_m3": 2.6}]}],
        "tugs": [{"name": "Plover"}],
        "barges": [{"name": "Teal", "capacity_m3": 420, "ullage_table": [[0, 420], [1, 330], [4, 20]],
        "hydrostatic_table": [[0.9, 210], [3.4, 890]], "hydrostatic_density_t_m3": 1.025, "draught_mean": 8,
        "ullage_u_m": 0.04, "draught_u_m": 0.02}]})");
}

void write_places(TempFolder& folder) {
    folder.with("claims.geojson", R"({"type": "FeatureCollection",
        "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32760"}},
        "features": [{"type": "Feature", "properties": {"claim": "FB1", "name": "Ferry Basin 1",
        "target_level_m": -9.6, "allowance_m": 0.3, "batter_h_per_v": 4, "material": "sand",
        "planned_in_situ_m3": 18000, "planned_start": "2025-08-04", "planned_finish": "2025-10-01"},
        "geometry": {"type": "Polygon", "coordinates": [[[711640, 5497370], [711740, 5497370],
        [711740, 5497450], [711640, 5497450], [711640, 5497370]]]}}]})");
    folder.with("grounds.geojson", R"({"type": "FeatureCollection", "features": [
        {"type": "Feature", "properties": {"ground": "Gannet Patch", "kind": "ground"}, "geometry":
        {"type": "Polygon", "coordinates": [[[179.6, -40.62], [179.63, -40.62], [179.63, -40.6], [179.6, -40.6],
        [179.6, -40.62]]]}},
        {"type": "Feature", "properties": {"ground": "Gannet Patch", "cell": "GP1", "kind": "cell"}, "geometry":
        {"type": "Polygon", "coordinates": [[[179.6, -40.62], [179.615, -40.62], [179.615, -40.6], [179.6, -40.6],
        [179.6, -40.62]]]}},
        {"type": "Feature", "properties": {"ground": "Gannet Patch", "cell": "wreck", "kind": "exclusion"},
        "geometry": {"type": "Polygon", "coordinates": [[[179.621, -40.611], [179.623, -40.611], [179.623, -40.609],
        [179.621, -40.609], [179.621, -40.611]]]}}]})");
}

void write_consent(TempFolder& folder) {
    folder.with("consents.json", R"({"consents": [{"consent": "MHB-25-117", "holder": "Marram Harbour Board",
        "authority": "Marram Regional Council", "granted": "2025-05-02", "commences": "2025-08-04",
        "expires": "2030-08-04", "year_starts": "07-01",
        "not_working": {"weekends": true, "dates": ["2025-10-27"], "yearly": ["12-20..01-10"]},
        "conditions": [
        {"condition": "11", "text": "no more than 215 000 m3 in any 12 months", "kind": "quantity",
         "applies": {"activity": "release", "grounds": ["Gannet Patch"]}, "measure": "in_situ_m3", "op": "at_most",
         "value": 215000, "window": {"kind": "rolling", "n": 12, "unit": "months"}, "warn_at": [0.8, 0.95]},
        {"condition": "14", "text": "whole release inside the ground", "kind": "place",
         "inside": {"ground": "Gannet Patch"}, "test": "whole_release", "inset_m": 20},
        {"condition": "20.2", "from": "2025-08-04", "to": "2026-01-01", "text": "tier 2", "kind": "series",
         "variable": "turbidity", "sites": ["R1"], "control": "C1", "statistic": {"kind": "median"},
         "over_minutes": 360, "min_complete": 0.75, "compare": {"above_control": 10}, "passes": {"held_hours": 2},
         "tier": 2, "clear": {"sites": "same", "held_hours": 6}, "responses": [{"tier": 2, "action": "slow",
         "within": {"n": 2, "unit": "hours"}, "to": "authority"}]}]}]})");
    folder.with("opening.csv",
                "consent,condition,from,to,value,u,source\nMHB-25-117,11,2025-01-01,2025-08-04,12000,,"
                "old book\n");
}

void write_log(TempFolder& folder) {
    folder.with("shifts.csv",
                "shift,start,end,dredger,tug,skipper,crew,weather,wave_height_m,signed_by,signed_at\n"
                "S-01,2025-08-04T06:00,2025-08-04T18:00,Heron,Plover,Ana,Caro; Dex,\"light, north\",0.4,Ana,"
                "2025-08-04T18:05\n");
    folder.with("stations.csv",
                "station,shift,claim,easting_m,northing_m,heading_deg,spuds_down,spuds_up\n"
                "ST-1,S-01,FB1,711660,5497390,45,2025-08-04T06:00,2025-08-04T12:00\n");
    folder.with("delays.csv",
                "shift,start,end,cause,remarks\nS-01,2025-08-04T12:00,2025-08-04T18:00,weather,\n");
    folder.with("loads.csv",
                "load,barge,material,loading_start,loading_end,dips_m,light_draughts_m,full_draughts_m,"
                "dock_density_t_m3,stated_hopper_m3,stated_in_situ_m3\n"
                "L-1,Teal,sand,2025-08-04T06:10,2025-08-04T08:00,0.9 1.0 1.1,,,,330,\n");
    folder.with("tallies.csv", "load,station,bucket,count\nL-1,ST-1,general,87\n");
    folder.with(
        "trips.csv",
        "trip,load,tug,departed,release_start,release_end,returned,ground,cell,lat,lon,position_u_m,"
        "wave_height_m,remarks\n"
        "T-0001,L-1,Plover,2025-08-04T08:10,2025-08-04T09:40,2025-08-04T09:48,2025-08-04T11:00,Gannet Patch,"
        "GP1,-40.61,179.605,8,0.5,\"said \"\"all clear\"\"\"\n");
    folder.with("tide.csv", "time,level_m\n2025-08-04T06:00,0.4\n2025-08-04T07:00,0.7\n");
}

void write_material(TempFolder& folder) {
    folder.with("tracks/T-0001.csv", "time,lat,lon\n2025-08-04T09:40,-40.61,179.605\n");
    folder.with(
        "turbidity/sites.csv",
        "site,role,easting_m,northing_m,unit,interval_min,range_low,range_high,spike,rate_per_min,flat_min\n"
        "R1,impact,711900,5497000,NTU,10,0,1000,,,\nC1,control,713000,5496000,NTU,10,,,,,\n");
    folder.with("turbidity/R1.csv",
                "time,value\n2025-08-04T06:00,3.1\n2025-08-04T06:10,\n2025-08-04T06:20,3.4\n");
    folder.with("surveys.csv",
                "survey,file,surveyed_on,kind,positive,offset_m,u_m,s44_order\n"
                "before,before.xyz,2025-08-01,before,up,0,0.1,\n");
    folder.with("surveys/before.xyz",
                "711650 5497401 -7.4\n711651 5497401 -7.4\n711650 5497400 -7.4\n711651 5497400 -7.4\n");
}

}  // namespace

void write_marram(TempFolder& folder) {
    write_plant(folder);
    write_places(folder);
    write_consent(folder);
    write_log(folder);
    write_material(folder);
}

Book book_from(const TempFolder& folder) {
    Book book = Book::in_memory("office");
    const auto outcome = import_folder(book, folder.path(), act_at_noon());
    if (!outcome) throw std::runtime_error(all_lines(outcome.refusals()));
    return book;
}

Refusals refusals_of(const TempFolder& folder) {
    return plan_import(read_folder(folder.path(), std::nullopt), nullptr).refusals();
}

Notes notes_of(const TempFolder& folder) {
    auto plan = plan_import(read_folder(folder.path(), std::nullopt), nullptr);
    if (!plan) throw std::runtime_error(all_lines(plan.refusals()));
    return plan->notes;
}

}  // namespace spoilbook::test
