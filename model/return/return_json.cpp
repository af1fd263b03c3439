// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/row_json.h"
#include "model/return/return_files.h"
#include "model/return/water_json.h"

namespace spoilbook {

namespace {

using Json = OrderedJson;

Json tenths(const std::optional<Tenths>& value) {
    return value ? Json(value->value()) : Json(nullptr);
}

Json total_json(const PrintedTotal& total, const char* key, bool hopper) {
    Json row;
    if (key != nullptr) row[key] = text_or_null(total.key);
    row["releases"] = total.releases;
    if (hopper) row["hopper_m3"] = total.hopper_m3.value();
    row["in_situ_m3"] = total.in_situ_m3.value();
    row["not_known"] = total.unknown;
    return row;
}

Json totals_json(const std::vector<PrintedTotal>& totals, const char* key, bool hopper = true) {
    Json rows = Json::array();
    for (const auto& total : totals)
        rows.push_back(total_json(total, key, hopper));
    return rows;
}

Json line_json(const ScheduleLine& line, const Zone& zone) {
    const auto& release = *line.release;
    const auto* load = release.load;
    Json row;
    row["trip"] = release.trip->trip;
    row["release"] = release.row == nullptr ? Json(nullptr) : Json(release.row->release);
    row["load"] = load == nullptr ? Json(nullptr) : Json(load->load);
    row["barge"] = text_or_null(line.barge);
    row["tug"] = text_or_null(line.tug);
    row["claims"] = text_or_null(line.claims);
    row["material"] = text_or_null(line.material);
    row["loading_start"] = load == nullptr ? Json(nullptr) : instant_or_null(load->loading_start, zone);
    row["loading_end"] = load == nullptr ? Json(nullptr) : instant_or_null(load->loading_end, zone);
    row["departed"] = instant_or_null(release.trip->departed, zone);
    row["release_start"] = instant_or_null(release.opened, zone);
    row["release_end"] = instant_or_null(release.ended, zone);
    row["returned"] = instant_or_null(release.trip->returned, zone);
    row["lat"] = number_or_null(release.lat);
    row["lon"] = number_or_null(release.lon);
    row["position_u_m"] = line.place.distance_m ? Json(line.place.position_u_m) : Json(nullptr);
    row["position_from"] = text_or_null(release.position_from);
    row["ground"] = text_or_null(line.ground);
    row["cell"] = text_or_null(line.cell);
    row["verdict"] = text(line.place.verdict);
    row["distance_to_boundary_m"] = number_or_null(line.place.distance_m);
    row["share_of_load"] = release.share;
    row["hopper_m3"] = tenths(line.hopper_m3);
    row["in_situ_m3"] = tenths(line.in_situ_m3);
    row["method"] = text_or_null(line.method);
    row["entered"] = instant_text(Instant{line.entered_ms}, zone);
    row["from_folder"] = line.imported;
    row["late"] = line.late;
    row["remarks"] = text_or_null(release.trip->remarks);
    return row;
}

Json returned_limit(const LimitState& state, const std::optional<LargestUsed>& largest, const Zone& zone) {
    Json row = limit_json(state, zone);
    row["as_at"] = instant_text(state.as_at, zone);
    row["largest_used"] = !largest ? Json(nullptr)
                                   : Json{{"used", largest->used},
                                          {"used_u", largest->used_u},
                                          {"from", instant_text(largest->from, zone)},
                                          {"to", instant_text(largest->to, zone)}};
    return row;
}

Json factor_json(const FactorUsed& factor, const Zone& zone) {
    return {{"factor", factor.name},
            {"value", factor.value},
            {"u", factor.u},
            {"from", instant_or_null(factor.from, zone)},
            {"accepted", instant_or_null(factor.accepted, zone)},
            {"waits_for_acceptance", factor.waits}};
}

Json estimate(const std::optional<Estimate>& amount) {
    return amount ? Json{{"value", amount->value}, {"u", amount->u()}} : Json(nullptr);
}

/// Null where every revision is accepted: both readings are one.
Json readings_json(const ReturnFacts& facts) {
    if (!facts.reported) return nullptr;
    const auto& restated = facts.totals.amounts;
    return {{"in_situ_m3",
             {{"as_reported", estimate(facts.reported->in_situ_m3)},
              {"as_restated", estimate(restated.in_situ_m3)}}},
            {"hopper_m3",
             {{"as_reported", estimate(facts.reported->hopper_m3)},
              {"as_restated", estimate(restated.hopper_m3)}}}};
}

Json judged_json(const ConditionJudged& judged, const Zone& zone) {
    Json row{{"condition", judged.condition->condition},
             {"kind", judged.condition->kind},
             {"text", text_or_null(judged.condition->text)},
             {"state", text(judged.state())},
             {"complied", judged.complied},
             {"cannot_tell", judged.cannot_tell},
             {"breached", judged.breached},
             {"reasons", judged.reasons}};
    row["failed"] = Json::array();
    for (const auto& finding : judged.failed)
        row["failed"].push_back(finding_json(finding, zone));
    return row;
}

Json not_judged_json(const NotJudged& one) {
    return {{"condition", one.condition->condition},
            {"kind", one.condition->kind},
            {"text", text_or_null(one.condition->text)},
            {"why", one.why}};
}

/// What all conditions say of what was done, or why they say nothing.
Json compliance_json(const ReturnFacts& facts) {
    Json json{{"all_judged_complied", facts.reasons.empty()},
              {"reasons", facts.reasons},
              {"conditions", Json::array()},
              {"conditions_not_judged_here", Json::array()}};
    for (const auto& judged : facts.judged)
        json["conditions"].push_back(judged_json(judged, facts.season->zone));
    for (const auto& one : facts.not_judged)
        json["conditions_not_judged_here"].push_back(not_judged_json(one));
    return json;
}

Json event_json(const Event& event, const Zone& zone) {
    return {{"kind", text_or_null(event.kind)},          {"from", instant_or_null(event.from, zone)},
            {"to", instant_or_null(event.to, zone)},     {"condition", text_or_null(event.condition)},
            {"place", text_or_null(event.place)},        {"what", text_or_null(event.what)},
            {"peak", number_or_null(event.peak)},        {"cause", text_or_null(event.cause)},
            {"told", text_or_null(event.told)},          {"action", text_or_null(event.action)},
            {"closed_by", text_or_null(event.closed_by)}};
}

Json duty_json(const DutyTime& time, const Zone& zone) {
    const DutyDone* done = time.done;
    return {{"consent", time.consent == nullptr ? Json(nullptr) : Json(time.consent->consent)},
            {"condition", time.condition->condition},
            {"text", text_or_null(time.condition->text)},
            {"what", time.duty.what},
            {"covers_from", time.covers ? instant_or_null(time.covers->from, zone) : Json(nullptr)},
            {"covers_to", time.covers ? instant_or_null(time.covers->to, zone) : Json(nullptr)},
            {"arises", instant_or_null(time.arises, zone)},
            {"due", instant_or_null(time.due, zone)},
            {"state", text(time.state)},
            {"late", time.late()},
            {"done_at", done == nullptr ? Json(nullptr) : instant_or_null(done->done_at, zone)},
            {"by", done == nullptr ? Json(nullptr) : text_or_null(done->by)},
            {"evidence", done == nullptr ? Json(nullptr) : text_or_null(done->evidence)}};
}

}  // namespace

std::string return_json(const ReturnFacts& facts) {
    const Season& season = *facts.season;
    Json json;
    json["return"] = facts.period_name;
    json["revision"] = facts.revision;
    json["harbour"] = season.harbour.name;
    json["authority"] = text_or_null(season.harbour.authority);
    json["zone"] = season.zone.name();
    json["position_datum"] = "WGS 84";
    json["consents"] = Json::array();
    for (const auto& consent : season.consents.rows())
        json["consents"].push_back({{"consent", consent.consent},
                                    {"holder", text_or_null(consent.holder)},
                                    {"authority", text_or_null(consent.authority)}});
    json["period"] = {{"from", instant_text(facts.period.from, season.zone)},
                      {"to", instant_text(facts.period.to, season.zone)}};
    json["as_at"] = instant_text(facts.as_at, season.zone);
    json["journal_head"] = facts.journal_head;
    json["made_by"] = text_or_null(facts.made_by);
    json["nil"] = facts.schedule.empty();
    json["totals"] = total_json(facts.printed, nullptr, true);
    json["by_claim"] = totals_json(facts.by_claim, "claim", false);
    json["by_ground"] = totals_json(facts.by_ground, "ground");
    json["by_cell"] = totals_json(facts.by_cell, "cell");
    json["by_material"] = totals_json(facts.by_material, "material");
    json["limits_at"] = instant_text(facts.limits_at, season.zone);
    json["limits"] = Json::array();
    for (std::size_t i = 0; i < facts.limits.size(); ++i)
        json["limits"].push_back(returned_limit(facts.limits[i], facts.largest_used[i], season.zone));
    json["schedule"] = Json::array();
    for (const auto& line : facts.schedule)
        json["schedule"].push_back(line_json(line, season.zone));
    json["events"] = Json::array();
    for (const auto* event : facts.events)
        json["events"].push_back(event_json(*event, season.zone));
    json["triggers"] = triggers_json(facts);
    json["turbidity"] = water_json(facts);
    json["duties"] = Json::array();
    for (const auto& time : facts.duties)
        json["duties"].push_back(duty_json(time, season.zone));
    json["factors"] = Json::array();
    for (const auto& factor : facts.factors)
        json["factors"].push_back(factor_json(factor, season.zone));
    json["unaccepted_revision"] = readings_json(facts);
    json["late_entries"] = facts.late_entries;
    json["entries_from_folders"] = facts.imported_entries;
    json["compliance"] = compliance_json(facts);
    return json.dump(2) + "\n";
}

}  // namespace spoilbook
