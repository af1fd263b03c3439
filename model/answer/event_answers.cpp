// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/event_answers.h"

#include <algorithm>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

bool is_another_site(const std::string& place, const std::string& site, const std::vector<Site>& sites) {
    return place != site &&
           std::any_of(sites.begin(), sites.end(), [&](const Site& one) { return one.site == place; });
}

std::vector<std::string_view> lacking_in(const Event& row, const TriggerEvent& event) {
    std::vector<std::string_view> lacking;
    if (row.action.empty()) lacking.emplace_back("what was done");
    if (row.told.empty()) lacking.emplace_back("who was told, and when");
    if (row.cause.empty()) lacking.emplace_back("the cause");
    if (row.closed_by.empty() && event.end) lacking.emplace_back("who closed it");
    return lacking;
}

AnswerState state_of(const EventAnswer& answer, Instant as_at) {
    const auto& due = answer.record.due;
    const bool told_by_now = !answer.told_at || *answer.told_at <= as_at;
    if (answer.row == nullptr || answer.row->action.empty() || !told_by_now)
        return due && as_at <= *due ? AnswerState::waiting : AnswerState::unanswered;
    if (!due) return AnswerState::answered;
    if (!answer.told_at) return AnswerState::undated;
    return *due < *answer.told_at ? AnswerState::late : AnswerState::answered;
}

EventAnswer answered(TriggerRecord record, const Season& season, const std::vector<Site>& sites,
                     Instant as_at) {
    EventAnswer answer{std::move(record), nullptr, std::nullopt, {}, AnswerState::unanswered};
    for (const auto& row : season.events.rows()) {
        if (!answers(row, answer.record, sites, as_at)) continue;
        auto lacking = lacking_in(row, answer.record.event);
        if (answer.row != nullptr && lacking.size() >= answer.lacking.size()) continue;
        answer.row = &row;
        answer.lacking = std::move(lacking);
    }
    if (answer.row != nullptr) answer.told_at = time_told(answer.row->told, season.zone);
    answer.state = state_of(answer, as_at);
    return answer;
}

}  // namespace

std::string_view text(AnswerState state) {
    switch (state) {
        case AnswerState::answered:
            return "answered";
        case AnswerState::undated:
            return "undated";
        case AnswerState::late:
            return "late";
        case AnswerState::waiting:
            return "waiting";
        case AnswerState::unanswered:
            break;
    }
    return "unanswered";
}

std::string_view answer_word(AnswerState state) {
    switch (state) {
        case AnswerState::answered:
            return "in time";
        case AnswerState::undated:
            return "cannot tell";
        case AnswerState::late:
            return "late";
        case AnswerState::waiting:
            return "not yet";
        case AnswerState::unanswered:
            break;
    }
    return "no answer";
}

bool answers(const Event& row, const TriggerRecord& record, const std::vector<Site>& sites, Instant as_at) {
    const auto& event = record.event;
    if (row.kind != "trigger" || row.condition != record.of->number || !row.from || as_at < *row.from)
        return false;
    if (is_another_site(row.place, event.site, sites)) return false;
    return *row.from <= event.end.value_or(as_at) && event.over_since <= row.to.value_or(*row.from);
}

std::optional<Instant> time_told(const std::string& told, const Zone& zone) {
    // A blank may stand between its day and its clock: the last word is tried, then the last two.
    std::size_t end = told.size();
    for (int words = 1; words <= 2; ++words) {
        const auto blank = end == 0 ? std::string::npos : told.find_last_of(' ', end - 1);
        end = blank == std::string::npos ? 0 : blank;
        const auto at = parse_instant(blank == std::string::npos ? told : told.substr(blank + 1), zone);
        if (at) return *at;
    }
    return std::nullopt;
}

std::vector<EventAnswer> event_answers(TurbidityWatch& watch, const Season& season, Instant as_at) {
    std::vector<EventAnswer> found;
    for (const auto& site : watch.sites()) {
        for (auto& record : watch.events(site.site))
            found.push_back(answered(std::move(record), season, watch.sites(), as_at));
    }
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
        return a.record.event.start < b.record.event.start;
    });
    return found;
}

}  // namespace spoilbook
