// SPDX-License-Identifier: GPL-3.0-or-later
// The members of a condition of kind series: a statistic of readings held against a level.
#include "model/folder/condition_kinds.h"
#include "model/folder/number_member.h"

namespace spoilbook {

namespace {

using H = Holds;

const ObjectShape& statistic() {
    static const ObjectShape shape{
        {{"kind", H::choice, true, {"mean", "median", "percentile", "ewma", "instant"}},
         number_member("p", 0, 100),
         number_member("type", 1, 9),
         number_member("half_life_min", 0.001, 1e6),
         number_member("alpha", 0, 1)}};
    return shape;
}

const ObjectShape& plus_hours() {
    static const ObjectShape shape{{number_member("hours", 0, 10000, true)}};
    return shape;
}
const ObjectShape& working_plus() {
    static const ObjectShape shape{{{"working_plus", H::object, true, {}, plus_hours}}};
    return shape;
}

const ObjectShape& hours_in() {
    static const ObjectShape shape{
        {number_member("hours", 0, 100000, true), number_member("days", 0, 10000, true)}};
    return shape;
}
const ObjectShape& passes() {
    static const ObjectShape shape{{{"at_once", H::truth},
                                    number_member("held_hours", 0, 100000),
                                    {"hours_in", H::object, false, {}, hours_in}},
                                   {{"at_once", "held_hours", "hours_in"}}};
    return shape;
}

const ObjectShape& baseline() {
    static const ObjectShape shape{{number_member("percentile", 0, 100),
                                    {"site", H::text},
                                    {"from", H::when},
                                    {"to", H::when},
                                    number_member("value"),
                                    number_member("times", 0, 1e6),
                                    number_member("plus", -1e6, 1e6)}};
    return shape;
}
const ObjectShape& paired() {
    static const ObjectShape shape{{number_member("x", -1e6, 1e6, true),
                                    number_member("lag_min", -100000, 100000),
                                    number_member("tolerance_min", 0, 100000)}};
    return shape;
}
/// A level that holds while the control lies in [control_from, control_to).
const ObjectShape& band() {
    static const ObjectShape shape{
        {number_member("control_from"), number_member("control_to"), number_member("absolute"),
         number_member("above_control"), number_member("times_control", 0, 1e6)},
        {{"absolute", "above_control", "times_control"}}};
    return shape;
}

}  // namespace

const ObjectShape& compare_shape() {
    static const ObjectShape shape{{number_member("absolute"),
                                    number_member("above_control"),
                                    number_member("times_control", 0, 1e6),
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
             number_member("over_minutes", 0, 1e7),
             number_member("min_complete", 0, 1),
             {"compare", H::object, true, {}, compare_shape},
             {"while", H::choice, false, {"always", "working"}},
             {"while", H::object, false, {}, working_plus},
             {"passes", H::object, false, {}, passes},
             number_member("tier", 0, 100),
             {"clear", H::object, false, {}, all_clear_shape},
             number_member("max_age_hours", 0, 10000)}};
}

}  // namespace spoilbook
