// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/piece_list.h"

namespace spoilbook::form {
namespace {

void add_side(PieceList& list, const std::string& side) {
    list.choice(
        side, "inside or outside what",
        {"ground", "the ground", "cell", "the cell", "exclusion", "the exclusion", "circle", "a circle of"},
        BlankHolds::which);
    for (const char* named : {"/ground", "/cell", "/exclusion"}) {
        if (list.has((side + named).c_str())) list.text(side + named, "its name");
    }
    if (!list.has((side + "/circle").c_str())) return;
    list.number((side + "/circle/radius_m").c_str(), "radius in m").words("m about");
    list.blank({side + "/circle/lat", piece_tr("latitude, as 41°12.3'S"), BlankHolds::latitude, {}, 12});
    list.blank({side + "/circle/lon", piece_tr("longitude, as 174°55.7'E"), BlankHolds::longitude, {}, 12});
}

void add_due(PieceList& list) {
    list.words("within").number("/due/n", "how many", 5);
    list.choice("/due/unit", "hours, days or months",
                {"hours", "hours", "days", "days", "working_days", "working days", "months", "months"});
    list.words("of").text("/due/after", "after what; blank: of its day");
}

}  // namespace

void add_place(PieceList& list) {
    list.words("Each release")
        .choice("/test", "what is tested",
                {"release_start", "begins", "release_end", "ends", "whole_release",
                 "from doors open to empty lies"});
    list.choice("", "inside or outside", {"inside", "inside", "outside", "outside"}, BlankHolds::which);
    for (const char* side : {"/inside", "/outside"}) {
        if (list.has(side)) add_side(list, side);
    }
    list.words(",")
        .number("/inset_m", "m from the line", 6)
        .words("m or more from its line; a position counts to u of");
    list.number("/position_u_m_max", "m; blank: any", 6).words("m, a track with a fix each");
    list.number("/track_interval_s_max", "s; blank: 60", 6).words("s");
}

void add_time(PieceList& list) {
    list.choice("/mode", "forbid or allow", {"forbid", "No", "allow", "Only here"});
    list.choice("/applies/activity", "what",
                {"release", "release", "dredge", "dredging", "both", "dredging or release"});
    list.words("at")
        .texts("/hours", "hours, 20:00..06:00")
        .words("on")
        .texts("/weekdays", "days of the week, mon, tue");
    list.words("in").texts("/dates", "dates, 09-01..10-15").words("by");
    list.choice("/daylight", "daylight", {"", "day or night", "day", "day", "night", "night"});
    list.words("with the tide from").number("/tide_level_m/min", "m or more", 5).words("to");
    list.number("/tide_level_m/max", "m or less", 5).words("m, tied to").text("/tied_to", "what else");
}

void add_surface(PieceList& list) {
    list.words("The bed in claim")
        .text("/claim", "claim", 8)
        .words("or of the ground")
        .text("/ground", "ground");
    list.words("lies no deeper than").number("/no_deeper_than_m", "level, −9.9").words("m; has a depth of");
    list.number("/least_depth_m", "least depth in m", 6).words("m or more; rises no more than");
    list.number("/no_rise_over_baseline_m", "m", 5).words("m over the survey");
    list.text("/baseline_survey", "baseline").words("; with an allowance of").number("/allowance_m", "m", 5);
    list.words("m; judged by").text("/survey", "survey").words("but for");
    list.percent("/tolerance_share", "share in %").words("% of its area");
}

void add_duty(PieceList& list) {
    list.words("A").choice("/what", "what is due",
                           {"report", "report", "return", "return", "notice", "notice", "survey", "survey",
                            "sample", "sample", "calibrate", "calibration", "plan", "plan"});
    list.words("is due");
    add_due(list);
    list.words(", counted from")
        .choice("/when", "from what",
                {"cycle", "the end of each", "every", "each", "on_event", "an event of the kind", "on_date",
                 "the date"},
                BlankHolds::which);
    if (list.has("/when/cycle"))
        list.choice("/when/cycle", "month, quarter or year",
                    {"month", "month", "quarter", "quarter", "year", "year"});
    if (list.has("/when/every"))
        list.number("/when/every/value", "how much", 10)
            .choice("/when/every/measure", "measure",
                    {"in_situ_m3", "m³ in situ", "hopper_m3", "m³ hopper", "wet_t", "t wet", "dry_t", "t dry",
                     "trips", "trips", "days", "days", "hours", "hours"});
    if (list.has("/when/on_event")) list.text("/when/on_event", "kind of event, or any");
    if (list.has("/when/on_date")) list.text("/when/on_date", "2026-07-01", 11);
    list.choice("/nil_required", "when there is nothing",
                {"", ", not when there is nothing", "yes", ", also when there is nothing"},
                BlankHolds::truth);
    list.words("; while it is overdue, no").texts("/blocks", "dredge, release");
}

void add_watch(PieceList& list) {
    list.words("A watch for").texts("/for", "what is looked for").words("within").number("/radius_m", "m");
    list.words("m, from").number("/before_minutes", "min before", 5).words("min before; if seen:");
    list.text("/action", "what is done", 24).words("; clear again after").number("/clear_minutes", "min", 5);
    list.words("min without;")
        .choice("/log", "logged", {"", "it need not be logged", "yes", "it is logged"}, BlankHolds::truth);
}

void add_record(PieceList& list) {
    list.words("Each trip has").texts("/required/trip", "columns of trips.csv", 30);
    list.words("each load has").texts("/required/load", "columns of loads.csv", 30);
    list.words("each release has").texts("/required/release", "columns of releases.csv", 30);
    list.words("; in transit is lost at most").number("/bounds/draught_lost_m", "m of draught", 6);
    list.words("m of draught; it is kept for").number("/retain_years", "years", 5).words("years");
    if (list.has("/allowed")) list.words("; what may go where is as its data below says");
}

std::vector<Piece> pieces_of(const Draft& draft) {
    PieceList list(draft);
    const std::string kind = draft.value("kind", "");
    if (kind == "quantity") add_quantity(list);
    if (kind == "place") add_place(list);
    if (kind == "time") add_time(list);
    if (kind == "series") add_series(list);
    if (kind == "surface") add_surface(list);
    if (kind == "duty") add_duty(list);
    if (kind == "watch") add_watch(list);
    if (kind == "record") add_record(list);
    if (kind == "text") {
        list.words("It is due");
        if (list.has("/due") && draft.at("/due"_json_pointer).is_string())
            list.words("by").text("/due", "2026-07-01", 11);
        else
            add_due(list);
    }
    return list.take();
}

std::vector<Piece> scope_pieces(const Draft& draft) {
    PieceList list(draft);
    list.words("It is about");
    const std::string kind = draft.value("kind", "");
    // Those say it in their own sentence.
    if (kind != "quantity" && kind != "time" && kind != "series")
        list.choice("/applies/activity", "which work",
                    {"both", "dredging and releases", "dredge", "dredging", "release", "releases"});
    list.texts("/applies/grounds", "grounds; blank: any", 14)
        .texts("/applies/cells", "cells; blank: any", 10)
        .texts("/applies/claims", "claims; blank: any", 12)
        .texts("/applies/materials", "materials; blank: any", 14)
        .texts("/applies/classes", "sea or land; blank: any", 10)
        .texts("/applies/plant", "barges and tugs; blank: any", 14);
    return list.take();
}

std::vector<Piece> word_pieces(const Draft& draft) {
    PieceList list(draft);
    list.words("In short:").text("/text", "in own words", 40);
    list.words("The consent's wording:").text("/wording", "as printed", 60);
    list.words("Warned at")
        .blank({"/warn_at", piece_tr("% of the limit, 80, 95"), BlankHolds::numbers, {}, 8});
    list.words("%.");
    const auto responses = draft.find("responses");
    const std::size_t count = responses != draft.end() && responses->is_array() ? responses->size() : 0;
    for (std::size_t i = 0; i < count; ++i) {
        const std::string at = "/responses/" + std::to_string(i);
        list.words("At tier").number((at + "/tier").c_str(), "tier; blank: any", 4);
        list.choice(at + "/action", "what is done",
                    {"", "nothing yet", "tell", "tell", "check", "check", "slow", "slow down", "move", "move",
                     "change_cell", "change the cell", "stop", "stop"});
        list.words("within").number((at + "/within/n").c_str(), "how many", 4);
        list.choice(at + "/within/unit", "hours, days or months",
                    {"hours", "hours", "days", "days", "working_days", "working days", "months", "months"});
        list.words("and tell").text(at + "/to", "whom", 20);
    }
    list.words("Still open:").text("/open_question", "question", 30);
    list.words("Settled by").text("/settled/by", "whom").words("on").text("/settled/on", "2026-07-01", 11);
    list.words("in").text("/settled/letter", "letter");
    return list.take();
}

}  // namespace spoilbook::form
