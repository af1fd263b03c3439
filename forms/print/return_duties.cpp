// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "forms/print/return_tables.h"
#include "model/consent/due_days.h"
#include "model/consent/duty_word.h"
#include "model/unit/time_text.h"

namespace spoilbook::print {

namespace {

std::string minute_shown(const std::optional<Instant>& at, const Zone& zone) {
    if (!at) return "";
    std::string shown = instant_text(*at, zone).substr(0, 16);
    shown[10] = ' ';
    return shown;
}

/// Midnight is the end of the day before: what may be done on the 14th is due on the 14th at 24:00.
std::string due_shown(const std::optional<Instant>& due, const Zone& zone) {
    if (!due) return "none set";
    const auto ended = day_ending(*due, zone);
    return ended ? day_text(*ended) + " 24:00" : minute_shown(due, zone);
}

std::string of_shown(const DutyTime& time, const Zone& zone) {
    if (time.event != nullptr || time.step || !time.covers) return minute_shown(time.arises, zone);
    return day_text(zone.day_of(time.covers->from)) + " to " + day_text(zone.day_of(time.covers->to - 1));
}

}  // namespace

void add_duties(const ReturnFacts& facts, std::vector<Block>& blocks) {
    blocks.emplace_back(Heading{1, "Duties"});
    const Zone& zone = facts.season->zone;
    Table table;
    table.columns = {{"Condition", "", Align::left, 0, true}, {"What", "", Align::left, 0, false},
                     {"Of", "", Align::left, 0, false},       {"Due", "", Align::left, 0, true},
                     {"State", "", Align::left, 0, false},    {"Done", "", Align::left, 0, true},
                     {"By", "", Align::left, 1, false},       {"Evidence", "", Align::left, 2, false}};
    for (const auto& time : facts.duties) {
        const DutyDone* done = time.done;
        table.rows.push_back({time.condition->condition, time.duty.what, of_shown(time, zone),
                              due_shown(time.due, zone), duty_word(time),
                              done == nullptr ? "" : minute_shown(done->done_at, zone),
                              done == nullptr ? "" : done->by, done == nullptr ? "" : done->evidence});
    }
    for (const auto& time : facts.duties) {
        const std::string listed = listed_text(time, zone);
        if (!listed.empty())
            table.notes.push_back(
                fmt::format("Condition {}, due {}: {}; one after that would make it due later.",
                            time.condition->condition, due_shown(time.due, zone), listed));
    }
    table.zero_rows_text = "No duty arose, was due or was done in the period, and none is open.";
    blocks.emplace_back(std::move(table));
}

}  // namespace spoilbook::print
