// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/duty_done.h"

namespace spoilbook {

template <>
const Definition<DutyDone>& definition() {
    static const auto d =
        Definition<DutyDone>("duty_done", "duties.csv",
                             "what a condition of kind duty asked for, as it was done")
            .since(2)
            .own_label("id", &DutyDone::duty_done)
            .text("condition", &DutyDone::condition, "number of the condition")
            .ref("consent", &DutyDone::consent, "consent",
                 "the consent; blank: whichever has a duty of that number")
            .instant_or_day("covers_from", &DutyDone::covers_from,
                            "where its period began, its event, or a day of it; blank: the earliest one open")
            .instant("done_at", &DutyDone::done_at, "when it was done")
            .text("by", &DutyDone::by, "who did it")
            .text("evidence", &DutyDone::evidence, "what shows it: a letter, a file's name")
            .text("remarks", &DutyDone::remarks, "remarks");
    return d;
}

}  // namespace spoilbook
