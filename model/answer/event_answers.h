// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/turbidity.h"

namespace spoilbook {

/// How a passed trigger stands with those who must answer it. `undated`: answered, but nobody wrote when.
enum class AnswerState { answered, undated, late, waiting, unanswered };

std::string_view text(AnswerState state);
/// The word that screens, lines and printed pages have for it; of `undated` it cannot be told whether it was
/// in time.
std::string_view answer_word(AnswerState state);

/// One passed trigger and the row of events.csv that answers it. Points into the watch and the season.
struct EventAnswer {
    TriggerRecord record;
    const Event* row = nullptr;             ///< of several that match the one that lacks least; null: none
    std::optional<Instant> told_at;         ///< the time that stands at the end of its `told`
    std::vector<std::string_view> lacking;  ///< what the row does not tell, in words; empty: it is whole
    AnswerState state = AnswerState::unanswered;
};

/// Whether a row of events.csv answers a passed trigger: its kind is trigger, its condition the same number,
/// its place blank or not the name of another site, and [from, to] overlaps [over_since, end]; a blank `to`
/// is the instant `from`, an open event goes on to the as-at. A row from after the as-at answers nothing yet.
bool answers(const Event& row, const TriggerRecord& record, const std::vector<Site>& sites, Instant as_at);

/// The instant at the end of a text such as "harbour office 2025-10-31T08:00+13:00"; nothing where there is
/// none.
std::optional<Instant> time_told(const std::string& told, const Zone& zone);

/// Every trigger passed at any site by the as-at, in order of start, with its answer. Answered: the row says
/// what was done; in time where `told` ends in a time at or before `due`. A row says who by `closed_by`,
/// which is asked for once the all-clear was met.
std::vector<EventAnswer> event_answers(TurbidityWatch& watch, const Season& season, Instant as_at);

}  // namespace spoilbook
