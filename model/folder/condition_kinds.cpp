// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/condition_kinds.h"

#include <map>

#include "model/folder/number_member.h"

namespace spoilbook {

namespace {

using H = Holds;

ObjectMember object(const char* name, const ObjectShape& (*shape)(), bool required = false) {
    return {name, H::object, required, {}, shape};
}
ObjectMember choice(const char* name, std::vector<std::string> choices, bool required = false) {
    return {name, H::choice, required, std::move(choices)};
}

std::vector<std::string> measures() {
    return {"in_situ_m3", "hopper_m3", "wet_t", "dry_t", "trips", "days", "hours"};
}

const ObjectShape& total_so_far() {
    static const ObjectShape shape{{number_member("floor", 0, unbounded, true)}};
    return shape;
}
const ObjectShape& unlocked() {
    static const ObjectShape shape{{{"on", H::when}, {"by", H::text}, {"letter", H::text}}};
    return shape;
}
const ObjectShape& reserve() {
    static const ObjectShape shape{{number_member("value", 0, unbounded, true),
                                    object("unlocked_by", unlocked),
                                    {"unlocked_by", H::text}}};
    return shape;
}

ObjectShape quantity() {
    return {{choice("measure", measures(), true), choice("method", {"ullage", "draughts", "tally", "stated"}),
             choice("op", {"at_most", "at_least"}), number_member("value", 0, 1e12),
             object("window", window_shape, true),
             choice("each_of", {"none", "claim", "ground", "cell", "material", "plant"}),
             number_member("share_of_total", 0, 1), number_member("of", 0, 1e12), object("of", total_so_far),
             object("reserve", reserve)},
            {{"value", "share_of_total"}}};
}

const ObjectShape& circle() {
    static const ObjectShape shape{{number_member("lat", -90, 90, true),
                                    number_member("lon", -180, 180, true),
                                    number_member("radius_m", 0, 1e6, true)}};
    return shape;
}
const ObjectShape& side() {
    static const ObjectShape shape{
        {{"ground", H::text}, {"cell", H::text}, {"exclusion", H::text}, object("circle", circle)}};
    return shape;
}

ObjectShape place() {
    return {
        {object("inside", side), object("outside", side),
         choice("test", {"release_start", "release_end", "whole_release"}), number_member("inset_m", 0, 1e5),
         number_member("position_u_m_max", 0, 1e5), number_member("track_interval_s_max", 0, 1e6)},
        {{"inside", "outside"}}};
}

const ObjectShape& tide_level() {
    static const ObjectShape shape{{number_member("min", -20, 20), number_member("max", -20, 20)}};
    return shape;
}

ObjectShape time_of_day() {
    return {{choice("mode", {"allow", "forbid"}, true),
             {"dates", H::month_days},
             {"hours", H::clock_spans},
             choice("daylight", {"day", "night"}),
             {"weekdays", H::some_of, false, {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}},
             object("tide_level_m", tide_level),
             {"tied_to", H::text}}};
}

ObjectShape surface() {
    return {{{"claim", H::text},
             {"ground", H::text},
             number_member("no_deeper_than_m", -200, 50),
             number_member("no_rise_over_baseline_m", 0, 100),
             {"baseline_survey", H::text},
             number_member("least_depth_m", -50, 200),
             number_member("allowance_m", 0, 20),
             {"survey", H::text},
             number_member("tolerance_share", 0, 1)}};
}

const ObjectShape& every() {
    static const ObjectShape shape{
        {choice("measure", measures(), true), number_member("value", 0, 1e12, true)}};
    return shape;
}
const ObjectShape& occasion() {
    static const ObjectShape shape{{choice("cycle", {"month", "quarter", "year"}),
                                    {"on_event", H::text},
                                    object("every", every),
                                    {"on_date", H::when}},
                                   {{"cycle", "on_event", "every", "on_date"}}};
    return shape;
}

ObjectShape duty() {
    return {{choice("what", {"report", "return", "notice", "survey", "sample", "calibrate", "plan"}, true),
             object("when", occasion, true),
             object("due", due_shape),
             {"nil_required", H::truth},
             {"blocks", H::some_of, false, {"dredge", "release"}}}};
}

ObjectShape watch() {
    return {{number_member("before_minutes", 0, 10000),
             number_member("radius_m", 0, 1e6),
             {"for", H::text},
             {"for", H::texts},
             {"action", H::text},
             number_member("clear_minutes", 0, 10000),
             {"log", H::truth}}};
}

const ObjectShape& required_fields() {
    static const ObjectShape shape{{{"trip", H::texts}, {"load", H::texts}, {"release", H::texts}}};
    return shape;
}
const ObjectShape& allowed_sets() {
    static const ObjectShape shape{{{"material_ground", H::lists}, {"claim_ground", H::lists}}};
    return shape;
}
const ObjectShape& bounds() {
    static const ObjectShape shape{{number_member("draught_lost_m", 0, 30)}};
    return shape;
}

ObjectShape record() {
    return {{object("required", required_fields), object("allowed", allowed_sets), object("bounds", bounds),
             number_member("retain_years", 0, 1000)}};
}

ObjectShape text() {
    return {{{"due", H::when}, object("due", due_shape)}};
}

}  // namespace

const ObjectShape& window_shape() {
    static const ObjectShape shape{
        {choice("kind", {"term", "calendar", "consent_year", "rolling", "mean", "campaign", "phase", "trip"},
                true),
         choice("unit", {"day", "week", "iso_week", "month", "year", "days", "weeks", "months", "years"}),
         number_member("n", 1, 100000),
         number_member("years", 1, 1000),
         {"from", H::when},
         {"to", H::when},
         {"name", H::text}}};
    return shape;
}

const ObjectShape& due_shape() {
    static const ObjectShape shape{{number_member("n", 0, 100000, true),
                                    choice("unit", {"hours", "days", "working_days", "months"}, true),
                                    {"after", H::text}}};
    return shape;
}

ObjectShape members_of_kind(const std::string& kind) {
    static const std::map<std::string, ObjectShape (*)()> kinds{
        {"quantity", quantity},     {"place", place},     {"time", time_of_day},
        {"series", series_members}, {"surface", surface}, {"duty", duty},
        {"watch", watch},           {"record", record},   {"text", text}};
    const auto found = kinds.find(kind);
    return found == kinds.end() ? ObjectShape{} : found->second();
}

}  // namespace spoilbook
