// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDate>
#include <QLocale>

#include "forms/consent/turbidity_rows.h"
#include "model/answer/response_times.h"

namespace spoilbook::form {

/// One time of a duty, ready to be read: no pointers into the season.
struct DutyRow {
    QString word;  ///< coming, due, overdue, done, done late, nil
    State shape = State::clear;
    DutyState state = DutyState::coming;
    QString condition, consent, what, text, covers, due_text, due_copy, left_text, how, done_text, evidence;
    std::optional<double> left;          ///< local days to the last day in time; negative: past it
    QDate day;                           ///< the last day in time; invalid without one
    std::optional<double> order;         ///< by which the table stands at first: when it is due
    std::optional<Instant> covers_from;  ///< as a record of it says which time it was for
    Id done;                             ///< the record of it; nil: none
    bool can_be_done = false;            ///< has arisen and is not done
    std::optional<TriggerRow> trigger;   ///< of a response: the passed trigger that it answers
};

/// Every time of every duty, as at; what needs doing first. The open ones come first, by their due time.
std::vector<DutyRow> duty_rows(const std::vector<DutyTime>& times, const Zone& zone, Instant as_at,
                               const QLocale& locale);
/// Puts what the triggers of `watch` ask for among them.
void add_response_rows(std::vector<DutyRow>& rows, const std::vector<ResponseTime>& times,
                       const TurbidityWatch& watch, const Season& season, Instant as_at,
                       const QLocale& locale);
std::vector<Column<DutyRow>> duty_columns();
/// "1 overdue, 2 due, the next by 12 Dec 2025." in one sentence, the worst first.
QString duties_sentence(const std::vector<DutyRow>& rows);
/// "10 working days after 30 Nov 2025: until 12 Dec 2025, 24:00. Not working: 6 and 7 Dec."
QString how_due(const DutyTime& time, const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
