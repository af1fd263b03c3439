// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/response_times.h"

namespace spoilbook {

namespace {

bool is_answered(AnswerState state) {
    return state != AnswerState::waiting && state != AnswerState::unanswered;
}

}  // namespace

std::vector<ResponseTime> response_times(TurbidityWatch& watch, const Season& season, Instant as_at) {
    std::vector<ResponseTime> times;
    for (const auto& answer : event_answers(watch, season, as_at)) {
        for (const auto& response : answer.record.responses) {
            ResponseTime time{answer, response, due_of(answer.record, response, season.zone), DutyState::due};
            if (is_answered(answer.state))
                time.state = DutyState::done;
            else if (time.due && as_at > *time.due)
                time.state = DutyState::overdue;
            times.push_back(std::move(time));
        }
    }
    return times;
}

}  // namespace spoilbook
