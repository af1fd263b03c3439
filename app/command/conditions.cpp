// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <limits>
#include <map>

#include "app/command/condition_rows.h"
#include "app/command/tracks.h"
#include "model/answer/board.h"
#include "model/consent/sentence.h"
#include "model/unit/calendar.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

std::string telling_text(Telling telling) {
    if (telling == Telling::cannot_tell) return "cannot_tell";
    return telling == Telling::over ? "over" : "not_over";
}

Json site_json(const TriggerState& state, const Zone& zone) {
    const Judged& last = state.standing.last;
    return {{"site", state.standing.site},
            {"at", instant_or_null(state.standing.at, zone)},
            {"telling", telling_text(last.telling)},
            {"statistic", number_or_null(last.statistic.value)},
            {"complete", last.statistic.complete},
            {"level", number_or_null(last.level)},
            {"event", state.open ? event_json(*state.open, zone) : Json(nullptr)}};
}

Json settled_json(const BoardRow& row) {
    if (row.settled_by.empty() && row.settled_on.empty() && row.settled_letter.empty()) return nullptr;
    return {{"by", text_or_null(row.settled_by)},
            {"on", text_or_null(row.settled_on)},
            {"letter", text_or_null(row.settled_letter)}};
}

template <class List, class Make>
Json list_of(const List& rows, const Zone& zone, const Make& make) {
    Json list = Json::array();
    for (const auto& row : rows)
        list.push_back(make(row, zone));
    return list;
}

Json row_json(const BoardRow& row, const Zone& zone) {
    Json json;
    json["consent"] = row.consent == nullptr ? Json(nullptr) : Json(row.consent->consent);
    json["condition"] = row.condition->condition;
    json["text"] = text_or_null(row.condition->text);
    json["kind"] = row.condition->kind;
    json["in_force"] = row.in_force;
    json["state"] = text(row.state);
    json["why"] = text_or_null(row.reads ? row.why : "its members do not read");
    json["open_question"] = text_or_null(row.open_question);
    json["settled"] = settled_json(row);
    json["limits"] = list_of(row.limits, zone, limit_json);
    json["judged"] = {{"complied", row.count(Compliance::complied)},
                      {"breached", row.count(Compliance::breached)},
                      {"cannot_tell", row.count(Compliance::cannot_tell)}};
    json["findings"] = list_of(row.findings, zone, finding_json);
    json["sites"] = list_of(row.sites, zone, site_json);
    json["events"] = list_of(row.events, zone, event_json);
    json["duties"] = list_of(row.duties, zone, duty_json);
    return json;
}

/// Every breach; of what cannot be told the first for each reason: a season without tracks has hundreds
/// alike.
std::string findings_text(const BoardRow& row, const Zone& zone) {
    std::string lines;
    std::map<std::string, std::size_t> alike;
    for (const auto& found : row.findings) {
        const bool breached = found.state == Compliance::breached;
        if (found.state == Compliance::complied || (!breached && ++alike[found.why] > 1)) continue;
        lines += fmt::format("    {} {} {}: {}\n", instant_text(found.at, zone), found.named(),
                             breached ? "breached it" : "cannot be told", found.why);
    }
    for (const auto& [why, n] : alike)
        if (n > 1) lines += fmt::format("    and {} more: {}; --json names each\n", n - 1, why);
    return lines;
}

std::string row_text(const BoardRow& row, const Zone& zone) {
    std::string lines =
        fmt::format("{:<12} condition {} ({})", in_words(text(row.state)), row.condition->condition,
                    row.condition->text.empty() ? condition_sentence(*row.condition) : row.condition->text);
    if (!row.findings.empty())
        lines += fmt::format(": of {} judged {} breached, {} cannot be told", row.findings.size(),
                             row.count(Compliance::breached), row.count(Compliance::cannot_tell));
    if (!row.why.empty()) lines += ": " + row.why;
    lines += "\n";
    if (!row.open_question.empty())
        lines += fmt::format("    open question: {}{}\n", row.open_question,
                             row.settled_by.empty() ? "" : "; settled by " + row.settled_by);
    lines += findings_text(row, zone);
    for (const auto& record : row.events)
        lines += fmt::format(
            "    {} at {}: passed {}, {}\n", record.event.end ? "event" : "open event", record.event.site,
            instant_text(record.event.start, zone),
            record.event.end ? "all clear " + instant_text(*record.event.end, zone) : "no all-clear yet");
    for (const auto& time : row.duties)
        lines += "    " + duty_line(time, zone);
    return lines;
}

struct Given {
    std::string from, to, month;
};

Checked<std::optional<Period>> period_given(const Given& given, const Zone& zone) {
    if (given.month.empty() && given.from.empty() && given.to.empty()) return std::optional<Period>();
    if (!given.month.empty()) {
        const auto month = month_named(zone, given.month);
        if (!month) return month.refusals();
        return std::optional(*month);
    }
    constexpr auto ever = std::numeric_limits<std::int64_t>::max() / 2;
    Period period{Instant{-ever}, Instant{ever}};
    for (const auto& [name, text, end] :
         {std::tuple("--from", &given.from, &period.from), std::tuple("--to", &given.to, &period.to)}) {
        if (text->empty()) continue;
        const auto at = time_given(name, *text, zone);
        if (!at) return at.refusals();
        *end = *at;
    }
    if (period.to <= period.from)
        return Refusal{"end-before-start", "--to", "the period ends before it begins", "give a later --to"};
    return std::optional(period);
}

Checked<Said> say_conditions(const Reading& reading, const Options& options, const Given& given) {
    const Zone& zone = reading.season.zone;
    const auto period = period_given(given, zone);
    if (!period) return period.refusals();
    auto tracks = tracks_of(reading, options);
    const Board made = board(*reading.book, *reading.ledger, tracks, reading.as_at, *period);
    Said said;
    said.json["as_at"] = instant_text(made.at, zone);
    const bool has_from = !given.month.empty() || !given.from.empty();
    const bool has_to = !given.month.empty() || !given.to.empty();
    said.json["from"] = has_from ? Json(instant_text((*period)->from, zone)) : Json(nullptr);
    said.json["to"] = has_to ? Json(instant_text((*period)->to, zone)) : Json(nullptr);
    said.json["conditions"] = list_of(made.rows, zone, row_json);
    for (const auto& row : made.rows)
        said.text += row_text(row, zone);
    if (made.rows.empty()) said.text = "no consent has a condition in force\n";
    return said;
}

}  // namespace

void add_conditions_command(CLI::App& program, Options& options, Task& task) {
    auto given = std::make_shared<Given>();
    auto* command =
        add_command(program, options, "conditions", "how every condition stands, and what it is judged by");
    add_read_options(*command, options);
    auto* month = command->add_option("--period", given->month, "what happened in that month, YYYY-MM");
    command->add_option("--from", given->from, "what happened from then on")->excludes(month);
    command->add_option("--to", given->to, "what happened before then")->excludes(month);
    command->callback([&options, &task, given] {
        task = [&options, given] {
            return read_book(
                options, [&](const Reading& reading) { return say_conditions(reading, options, *given); });
        };
    });
}

}  // namespace spoilbook
