// SPDX-License-Identifier: GPL-3.0-or-later
// The members of a condition of kind series: a statistic of readings held against a level.
#include "model/folder/condition_kinds.h"

namespace spoilbook {

ObjectShape series_members();

namespace {

using H = Holds;

constexpr double unbounded = std::numeric_limits<double>::max();

ObjectMember number(const char* name, double low = -unbounded, double high = unbounded,
                    bool required = false) {
    return {name, H::number, required, {}, nullptr, low, high};
}

const ObjectShape& statistic() {
    static const ObjectShape shape{
        {{"kind", H::choice, true, {"mean", "median", "percentile", "ewma", "instant"}},
         number("p", 0, 100),
         number("type", 1, 9),
         number("half_life_min", 0.001, 1e6),
         number("alpha", 0, 1)}};
    return shape;
}

const ObjectShape& plus_hours() {
    static const ObjectShape shape{{number("hours", 0, 10000, true)}};
    return shape;
}
const ObjectShape& working_plus() {
    static const ObjectShape shape{{{"working_plus", H::object, true, {}, plus_hours}}};
    return shape;
}

const ObjectShape& hours_in() {
    static const ObjectShape shape{{number("hours", 0, 100000, true), number("days", 0, 10000, true)}};
    return shape;
}
const ObjectShape& passes() {
    static const ObjectShape shape{{{"at_once", H::truth},
                                    number("held_hours", 0, 100000),
                                    {"hours_in", H::object, false, {}, hours_in}},
                                   {{"at_once", "held_hours", "hours_in"}}};
    return shape;
}

const ObjectShape& baseline() {
    static const ObjectShape shape{{number("percentile", 0, 100),
                                    {"site", H::text},
                                    {"from", H::when},
                                    {"to", H::when},
                                    number("value"),
                                    number("times", 0, 1e6),
                                    number("plus", -1e6, 1e6)}};
    return shape;
}
const ObjectShape& paired() {
    static const ObjectShape shape{{number("x", -1e6, 1e6, true), number("lag_min", -100000, 100000),
                                    number("tolerance_min", 0, 100000)}};
    return shape;
}
/// A level that holds while the control lies in [control_from, control_to).
const ObjectShape& band() {
    static const ObjectShape shape{{number("control_from"), number("control_to"), number("absolute"),
                                    number("above_control"), number("times_control", 0, 1e6)},
                                   {{"absolute", "above_control", "times_control"}}};
    return shape;
}

}  // namespace

const ObjectShape& compare_shape() {
    static const ObjectShape shape{{number("absolute"),
                                    number("above_control"),
                                    number("times_control", 0, 1e6),
                                    {"higher_of", H::objects, false, {}, compare_shape},
                                    {"bands", H::objects, false, {}, band},
                                    {"baseline", H::object, false, {}, baseline},
                                    {"paired_above_control", H::object, false, {}, paired}},
                                   {{"absolute", "above_control", "times_control", "higher_of", "bands",
                                     "baseline", "paired_above_control"}}};
    return shape;
}

ObjectShape series_members() {
    return {{{"variable", H::choice, true, {"turbidity", "wave_height_m", "wind_kn"}},
             {"sites", H::texts},
             {"control", H::text},
             {"statistic", H::object, false, {}, statistic},
             number("over_minutes", 0, 1e7),
             number("min_complete", 0, 1),
             {"compare", H::object, true, {}, compare_shape},
             {"while", H::choice, false, {"always", "working"}},
             {"while", H::object, false, {}, working_plus},
             {"passes", H::object, false, {}, passes},
             number("tier", 0, 100),
             {"clear", H::object, false, {}, all_clear_shape},
             number("max_age_hours", 0, 10000)}};
}

}  // namespace spoilbook
