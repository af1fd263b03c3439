// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/row_json.h"

namespace spoilbook {

OrderedJson limit_json(const LimitState& state, const Zone& zone) {
    OrderedJson row;
    row["consent"] = state.consent == nullptr ? OrderedJson(nullptr) : OrderedJson(state.consent->consent);
    row["condition"] = state.condition->condition;
    row["text"] = state.condition->text;
    row["quantity"] = measure_text(state.quantity.measure);
    row["method"] = text_or_null(state.quantity.method);
    row["op"] = state.quantity.at_most ? "at_most" : "at_least";
    row["share"] = state.quantity.share_of_total.has_value();
    if (state.member) {
        row["each"] = {{each_of_text(state.quantity.each_of), text_or_null(state.member->name)}};
    } else {
        row["each"] = nullptr;
    }
    row["window_start"] = instant_or_null(state.window_start, zone);
    row["window_end"] = instant_or_null(state.window_end, zone);
    row["limit"] = number_or_null(state.limit);
    row["used"] = state.used;
    row["used_u"] = state.used_u;
    row["headroom"] = number_or_null(state.headroom());
    row["p_over"] = number_or_null(state.p_over);
    row["first_over"] = instant_or_null(state.first_over, zone);
    row["unknown"] = state.unknown;
    row["not_recorded"] = state.not_recorded;
    row["used_at_most"] = number_or_null(state.used_at_most);
    row["used_over_years"] = number_or_null(state.used_over_years);
    if (state.used_as_reported) {
        row["used_as_reported"] = *state.used_as_reported;
        row["used_as_restated"] = number_or_null(state.used_as_restated);
    }
    return row;
}

namespace {

OrderedJson bed_json(const SurfaceLook& look) {
    OrderedJson worst = nullptr;
    if (look.worst)
        worst = {{"past_m", look.worst->past_m},
                 {"past_m_u", look.has_u ? OrderedJson(look.worst->u_m) : OrderedJson(nullptr)},
                 {"level_m", look.worst->level_m},
                 {"easting_m", look.worst->place.easting_m},
                 {"northing_m", look.worst->place.northing_m}};
    return {{"area_m2", look.area_m2},
            {"covered_m2", look.covered_m2},
            {"past_m2", look.past_m2},
            {"in_doubt_m2", look.in_doubt_m2},
            {"past_share", look.past_share()},
            {"possible_share", look.possible_share()},
            {"worst", worst}};
}

}  // namespace

OrderedJson finding_json(const Finding& found, const Zone& zone) {
    const bool has_row = found.release != nullptr && found.release->row != nullptr;
    return {{"trip", found.trip == nullptr ? OrderedJson(nullptr) : OrderedJson(found.trip->trip)},
            {"release", has_row ? OrderedJson(found.release->row->release) : OrderedJson(nullptr)},
            {"load", found.load == nullptr ? OrderedJson(nullptr) : OrderedJson(found.load->load)},
            {"window", text_or_null(found.window)},
            {"survey", found.survey == nullptr ? OrderedJson(nullptr) : OrderedJson(found.survey->survey)},
            {"place", text_or_null(found.place)},
            {"bed", found.bed ? bed_json(*found.bed) : OrderedJson(nullptr)},
            {"at", instant_text(found.at, zone)},
            {"state", text(found.state)},
            {"why", text_or_null(found.why)}};
}

}  // namespace spoilbook
