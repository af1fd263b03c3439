// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/piece_list.h"

namespace spoilbook::form {
namespace {

void add_statistic(PieceList& list) {
    list.choice("/statistic/kind", "statistic",
                {"instant", "a reading", "mean", "the mean", "median", "the median", "percentile",
                 "the percentile", "ewma", "the weighted mean"});
    if (list.is("/statistic/kind", "percentile"))
        list.number("/statistic/p", "which, 0 to 100", 5).number("/statistic/type", "type 1 to 9", 4);
    if (list.is("/statistic/kind", "ewma"))
        list.number("/statistic/half_life_min", "half-life in min").number("/statistic/alpha", "or alpha", 5);
    list.words("over").number("/over_minutes", "minutes", 6).words("min, with");
    list.percent("/min_complete", "complete, in %").words("% or more of its readings there,");
}

void add_level(PieceList& list) {
    list.choice("/compare", "held against",
                {"absolute", "above", "above_control", "above the control by more than", "times_control",
                 "above the control times", "baseline", "above a baseline", "paired_above_control",
                 "above the control, in pairs, by", "higher_of", "above the highest of several", "bands",
                 "above a level by bands"},
                BlankHolds::which);
    if (list.has("/compare/absolute")) list.number("/compare/absolute", "level");
    if (list.has("/compare/above_control")) list.number("/compare/above_control", "by how much");
    if (list.has("/compare/times_control")) list.number("/compare/times_control", "times");
    if (list.has("/compare/baseline"))
        list.number("/compare/baseline/times", "times", 5)
            .number("/compare/baseline/percentile", "percentile", 5)
            .text("/compare/baseline/site", "at site", 8)
            .text("/compare/baseline/from", "from", 11)
            .text("/compare/baseline/to", "until", 11)
            .number("/compare/baseline/value", "or the value")
            .number("/compare/baseline/plus", "plus", 5);
    if (list.has("/compare/paired_above_control"))
        list.number("/compare/paired_above_control/x", "by how much")
            .number("/compare/paired_above_control/lag_min", "lag in min", 6)
            .number("/compare/paired_above_control/tolerance_min", "within min", 6);
    // Lists of levels have no blanks: they come with consents.json and stay as they are.
    if (list.has("/compare/higher_of") || list.has("/compare/bands")) list.words("as its data below says");
}

void add_passing(PieceList& list) {
    list.choice("/passes", "passes",
                {"at_once", ", at once,", "held_hours", ", held for", "hours_in", ", in sum for"},
                BlankHolds::which);
    if (list.has("/passes/held_hours")) list.number("/passes/held_hours", "hours", 5).words("h,");
    if (list.has("/passes/hours_in"))
        list.number("/passes/hours_in/hours", "hours", 5)
            .words("h in")
            .number("/passes/hours_in/days", "days", 5)
            .words("days,");
}

}  // namespace

void add_series(PieceList& list) {
    list.choice("/variable", "what is measured",
                {"turbidity", "Turbidity", "wave_height_m", "Wave height in m", "wind_kn", "Wind in kn"});
    list.words("at").texts("/sites", "sites; blank: all but controls").words(":");
    add_statistic(list);
    add_level(list);
    list.text("/control", "control", 6);
    add_passing(list);
    if (list.has("/while/working_plus"))
        list.words("while work goes on and")
            .number("/while/working_plus/hours", "hours after", 5)
            .words("h after,");
    else
        list.choice("/while", "while",
                    {"", "at any time,", "always", "always,", "working", "while work goes on,"});
    list.words("passes tier").number("/tier", "tier", 4);
    list.words("; clear again after").number("/clear/held_hours", "hours", 5).words("h not over at");
    list.blank({"/clear/sites",
                piece_tr("same, all, or sites"),
                BlankHolds::word_or_texts,
                {{QStringLiteral("same"), {}}, {QStringLiteral("all"), {}}},
                10});
    list.words("; of").choice("/applies/activity", "watches",
                              {"both", "dredging and releases", "dredge", "dredging", "release", "releases"});
    if (!list.is("/variable", "turbidity")) list.number("/max_age_hours", "an observation counts, in h", 5);
}

}  // namespace spoilbook::form
