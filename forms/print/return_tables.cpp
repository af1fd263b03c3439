// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/return_tables.h"

#include <fmt/format.h>

#include <algorithm>

#include "forms/print/figure_text.h"
#include "model/consent/quantity_text.h"
#include "model/record/release_name.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook::print {

namespace {

Column text_column(const char* title, double weight = 0) {
    return {title, "", Align::left, weight, false};
}
Column fixed_column(const char* title) {
    return {title, "", Align::left, 0, true};
}
Column number_column(const char* title, const char* unit) {
    return {title, unit, Align::right, 0, true};
}

Table totals_table(const char* caption, const char* key, const std::vector<PrintedTotal>& totals,
                   bool hopper) {
    Table table;
    table.caption = caption;
    table.columns = {text_column(key, 1), number_column("Releases", "")};
    if (hopper) table.columns.push_back(number_column("Hopper", "m³"));
    table.columns.push_back(number_column("In situ", "m³"));
    PrintedTotal sum;
    for (const auto& total : totals) {
        Row row{total.key.empty() ? "none recorded" : total.key, std::to_string(total.releases)};
        if (hopper) row.emplace_back(tenths_shown(total.hopper_m3));
        row.emplace_back(tenths_shown(total.in_situ_m3));
        table.rows.push_back(std::move(row));
        sum.hopper_m3.tenths += total.hopper_m3.tenths;
        sum.in_situ_m3.tenths += total.in_situ_m3.tenths;
    }
    if (totals.size() > 1) {
        table.total = hopper ? Row{"Total", "", tenths_shown(sum.hopper_m3), tenths_shown(sum.in_situ_m3)}
                             : Row{"Total", "", tenths_shown(sum.in_situ_m3)};
    }
    table.zero_rows_text = "Nil.";
    return table;
}

/// Of a limit on days or weeks the fullest one of the period stands for all of them.
LimitState fullest(const LimitState& state, const std::optional<LargestUsed>& largest) {
    LimitState shown = state;
    if (!largest) return shown;
    shown.used = largest->used;
    shown.used_u = largest->used_u;
    shown.window_start = largest->from;
    shown.window_end = largest->to;
    shown.p_over.reset();
    return shown;
}

std::string window_shown(const LimitState& state, const Zone& zone) {
    const auto& window = state.quantity.window;
    if (window.kind == WindowKind::calendar && window.unit == WindowUnit::days && state.window_start)
        return day_text(zone.day_of(*state.window_start));
    const auto day = [&](Instant at) { return day_text(zone.day_of(at)); };
    if (!state.window_start) return state.window_end ? "to " + day(*state.window_end) : "all";
    return day(*state.window_start) + " to " + (state.window_end ? day(*state.window_end) : "");
}

bool answers_a_trigger(const ReturnFacts& facts, const Event& event) {
    return std::any_of(facts.triggers.begin(), facts.triggers.end(),
                       [&](const EventAnswer& answer) { return answer.row == &event; });
}

Mark verdict_mark(PlaceVerdict verdict) {
    switch (verdict) {
        case PlaceVerdict::inside:
            return Mark::met;
        case PlaceVerdict::outside:
            return Mark::passed;
        case PlaceVerdict::cannot_tell:
            break;
    }
    return Mark::unknown;
}

Row schedule_row(const ScheduleLine& line, const Zone& zone) {
    const auto& release = *line.release;
    std::string remarks = release.trip->remarks;
    if (release.share != 1)
        remarks += fmt::format("{}share {} of the load", remarks.empty() ? "" : "; ", release.share);
    if (release.position_from == "deck log")
        remarks += (remarks.empty() ? "" : "; ") + std::string("position from the deck log");
    return {name_with_trip(release),
            release.load != nullptr ? release.load->load : "",
            line.barge,
            line.tug,
            line.claims,
            line.material,
            release.load != nullptr ? clock_shown(release.load->loading_end, zone) : "",
            clock_shown(release.trip->departed, zone),
            clock_shown(release.opened, zone),
            clock_shown(release.ended, zone),
            release.lat ? fmt::format("{:.5f}", *release.lat) : "",
            release.lon ? fmt::format("{:.5f}", *release.lon) : "",
            line.cell,
            Cell(in_words(text(line.place.verdict)), verdict_mark(line.place.verdict)),
            line.place.distance_m ? whole_shown(*line.place.distance_m) : "",
            line.place.distance_m ? u_shown(line.place.position_u_m) : "",
            line.hopper_m3 ? tenths_shown(*line.hopper_m3) : "",
            line.in_situ_m3 ? tenths_shown(*line.in_situ_m3) : "not known",
            line.method,
            remarks};
}

}  // namespace

void add_totals(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{1, "Totals of the period"});
    blocks.emplace_back(totals_table("By claim", "Claim", facts.by_claim, false));
    blocks.emplace_back(totals_table("By ground", "Ground", facts.by_ground, true));
    blocks.emplace_back(totals_table("By cell", "Cell", facts.by_cell, true));
    blocks.emplace_back(totals_table("By material", "Material", facts.by_material, true));
    blocks.emplace_back(
        Paragraph{"Each release is fixed to 0.1 m³; totals are the sums of what is printed. A release of a "
                  "load from several claims is shared out by buckets, capacity and fill factor.",
                  TextStyle::small});
}

void add_limits(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{1, "Limits"});
    Table table;
    table.caption = "As at " + instant_text(facts.limits_at, facts.season->zone);
    table.columns = {fixed_column("Condition"),     text_column("What", 1),     number_column("Used", ""),
                     number_column("±", ""),        number_column("Limit", ""), number_column("Headroom", ""),
                     number_column("P(over)", "%"), fixed_column("Unit"),       fixed_column("Window"),
                     fixed_column("State")};
    for (std::size_t i = 0; i < facts.limits.size(); ++i) {
        const LimitState state = fullest(facts.limits[i], facts.largest_used[i]);
        std::string name = state.condition->condition;
        if (state.member) name += " " + (state.member->name.empty() ? "none" : state.member->name);
        table.rows.push_back(
            {name, state.condition->text, used_shown(state), used_u_shown(state), limit_shown(state),
             headroom_shown(state), state.p_over ? chance_text(*state.p_over) : "", unit_text(state.quantity),
             window_shown(state, facts.season->zone),
             Cell(limit_word(state, facts.exceeded[i]), limit_mark(state, facts.exceeded[i]))});
    }
    table.zero_rows_text = "No condition of the consent is a limit on a quantity.";
    table.notes = {
        "Used is rounded up; headroom is limit minus used; ± is one standard uncertainty; P(over) is the "
        "probability that more was used than the limit. Of a limit on days or weeks the fullest of the "
        "period "
        "is shown. \"Was over\": at some time in the window, and not any more. A limit that "
        "ended in the period stands as at its end."};
    blocks.emplace_back(std::move(table));
}

void add_events(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{1, "Events"});
    Table table;
    table.columns = {fixed_column("From"),      fixed_column("To"),     fixed_column("Kind"),
                     fixed_column("Condition"), text_column("What", 2), text_column("Cause", 2),
                     text_column("Told", 1),    text_column("Done", 2)};
    for (const auto* event : facts.events) {
        if (answers_a_trigger(facts, *event)) continue;
        table.rows.push_back({clock_shown(event->from, facts.season->zone),
                              clock_shown(event->to, facts.season->zone), event->kind, event->condition,
                              event->what, event->cause, event->told, event->action});
    }
    table.zero_rows_text = facts.turbidity
                               ? "No breach, incident or complaint is recorded for the period."
                               : "No trigger, breach, incident or complaint is recorded for the period.";
    blocks.emplace_back(std::move(table));
}

void add_schedule(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{1, "Schedule of trips"});
    Table table;
    table.columns = {fixed_column("Trip"),    fixed_column("Load"),           fixed_column("Barge"),
                     fixed_column("Tug"),     fixed_column("Claims"),         fixed_column("Material"),
                     fixed_column("Full"),    fixed_column("Cast off"),       fixed_column("Doors open"),
                     fixed_column("Empty"),   number_column("Latitude", "°"), number_column("Longitude", "°"),
                     fixed_column("Cell"),    fixed_column("Verdict"),        number_column("To edge", "m"),
                     number_column("±", "m"), number_column("Hopper", "m³"),  number_column("In situ", "m³"),
                     fixed_column("By")};
    Column remarks = text_column("Remarks", 1);
    remarks.below = true;
    table.columns.push_back(remarks);
    for (const auto& line : facts.schedule)
        table.rows.push_back(schedule_row(line, facts.season->zone));
    if (!facts.schedule.empty()) {
        Row total(table.columns.size(), "");
        total[0] = "Total";
        total[16] = tenths_shown(facts.printed.hopper_m3);
        total[17] = tenths_shown(facts.printed.in_situ_m3);
        table.total = std::move(total);
    }
    table.zero_rows_text = "Nil: no release in this period.";
    table.notes = {"Times are month-day and clock of " + facts.season->zone.name() +
                   ". To edge: distance to the ground's boundary, exclusions out, positive inside; ± is one "
                   "standard uncertainty of the position, 10 m where none is recorded."};
    blocks.emplace_back(std::move(table));
}

}  // namespace spoilbook::print
