// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <array>
#include <cmath>

#include "app/command/condition_rows.h"
#include "app/command/instruments.h"
#include "app/command/solids.h"
#include "model/answer/board_state.h"
#include "model/answer/event_answers.h"
#include "model/answer/untold_water.h"
#include "model/folder/nearest.h"
#include "model/unit/calendar.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

/// What is shown; both ends are shown.
struct Span {
    std::optional<Instant> from, to;
    [[nodiscard]] bool has(Instant at) const { return (!from || *from <= at) && (!to || at <= *to); }
    /// Something that goes on until its end, which belongs to it; nothing: it goes on.
    [[nodiscard]] bool touches(Instant begin, std::optional<Instant> end) const {
        return (!to || begin <= *to) && (!from || !end || *from <= *end);
    }
};

Json flags_json(const SiteSeries& series, const Span& span) {
    std::array<std::size_t, 10> counted{};
    for (std::size_t i = 0; i < series.readings.size(); ++i) {
        if (span.has(series.readings[i].time)) ++counted[static_cast<std::size_t>(series.flags[i])];
    }
    Json flags;
    for (const std::size_t flag : {1U, 2U, 3U, 4U, 9U})
        flags[std::to_string(flag)] = counted[flag];
    return flags;
}

Json statistic_json(const SeriesRule& rule) {
    static constexpr std::array names{"mean", "median", "percentile", "ewma", "instant"};
    Json row;
    row["kind"] = names[static_cast<std::size_t>(rule.statistic.kind)];
    if (rule.statistic.kind == StatisticKind::percentile) {
        row["p"] = rule.statistic.p;
        row["type"] = rule.statistic.type;
    }
    row["over_minutes"] = rule.over_min;
    row["min_complete"] = rule.min_complete;
    return row;
}

Json condition_json(const TriggerCondition* condition) {
    if (condition == nullptr) return nullptr;
    return {{"consent", condition->consent == nullptr ? Json(nullptr) : Json(condition->consent->consent)},
            {"condition", condition->number},
            {"statistic", statistic_json(condition->trigger.versions.back().rule)}};
}

/// 2, and 2.5 where a consent has such tiers.
Json tier_json(const std::optional<double>& tier) {
    if (!tier || std::floor(*tier) != *tier) return number_or_null(tier);
    return static_cast<int>(*tier);
}

void put_answer(Json& row, const EventAnswer& answer, const Zone& zone) {
    const Event none;
    const Event& said = answer.row == nullptr ? none : *answer.row;
    row["answer"] = text(answer.state);
    row["answered"] = answer.row != nullptr && !said.action.empty();
    row["answered_by"] = text_or_null(said.closed_by);
    row["action"] = text_or_null(said.action);
    row["told"] = text_or_null(said.told);
    row["told_at"] = instant_or_null(answer.told_at, zone);
    row["cause"] = text_or_null(said.cause);
    row["lacking"] = answer.lacking;
}

Json answered_json(const EventAnswer& answer, const Zone& zone) {
    Json row = event_json(answer.record, zone);
    put_answer(row, answer, zone);
    return row;
}

Json months_json(const std::vector<MonthComplete>& months, const Span& span, const Zone& zone) {
    Json rows = Json::array();
    const auto month_of = [&](Instant at) { return month_text(zone.day_of(at)); };
    for (const auto& month : months) {
        if ((span.from && month.month < month_of(*span.from)) ||
            (span.to && month.month > month_of(*span.to)))
            continue;
        rows.push_back({{"month", month.month},
                        {"readings", month.readings},
                        {"counted", month.counted},
                        {"expected", month.expected},
                        {"complete", number_or_null(month.share())},
                        {"calibration_expired", month.expired}});
    }
    return rows;
}

Json instruments_json(const std::vector<Instrument>& instruments, const Zone& zone) {
    Json rows = Json::array();
    for (const auto& one : instruments)
        rows.push_back({{"serial", text_or_null(one.serial)},
                        {"from", instant_or_null(one.deployed, zone)},
                        {"to", instant_or_null(one.recovered, zone)},
                        {"calibrated", instant_or_null(one.calibrated, zone)},
                        {"expires", instant_or_null(one.calibrated_until, zone)},
                        {"by", text_or_null(one.by)}});
    return rows;
}

/// How the site stands at the as-at under each condition that watches it, and why where that cannot be told.
Json standing_json(TurbidityWatch& watch, const std::string& site, Instant as_at, const Zone& zone) {
    Json rows = Json::array();
    for (const auto& state : watch.states()) {
        if (state.standing.site != site) continue;
        const auto& last = state.standing.last;
        const auto why = why_site_is_not_told(state, as_at, zone);
        Json row;
        row["consent"] = state.of->consent == nullptr ? Json(nullptr) : Json(state.of->consent->consent);
        row["condition"] = state.of->number;
        row["state"] = !why.empty() ? "cannot_tell" : last.telling == Telling::over ? "over" : "not_over";
        row["why"] = text_or_null(why);
        row["at"] = instant_or_null(state.standing.at, zone);
        row["compared"] = number_or_null(last.compared);
        row["level"] = number_or_null(last.level);
        row["over_since"] = instant_or_null(state.standing.over_since, zone);
        row["event_open"] = state.open.has_value();
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string standing_text(const Json& row) {
    const auto number = [](const Json& value) {
        return value.is_null() ? std::string("not known") : fmt::format("{:.2f}", value.get<double>());
    };
    std::string text = fmt::format("condition {} now: ", row["condition"].get<std::string>());
    if (!row["why"].is_null())
        text += "cannot tell: " + row["why"].get<std::string>();
    else
        text += fmt::format("{} against {} at {}", number(row["compared"]), number(row["level"]),
                            row["at"].get<std::string>());
    return text + (row["event_open"].get<bool>() ? ", an event is open\n" : "\n");
}

std::vector<EventAnswer> answers_at(TurbidityWatch& watch, const Reading& reading, const std::string& site,
                                    const Span& span) {
    auto found = event_answers(watch, reading.season, reading.as_at);
    std::erase_if(found, [&](const EventAnswer& answer) {
        const auto& event = answer.record.event;
        return event.site != site || !span.touches(event.over_since, event.end);
    });
    return found;
}

std::string event_text(const EventAnswer& answer, const Zone& zone) {
    const auto& record = answer.record;
    const auto& event = record.event;
    return fmt::format(
        "condition {}: over since {}, passed {}, {}, peak {}{}; {}\n", record.of->number,
        instant_text(event.over_since, zone), instant_text(event.start, zone),
        event.end ? "all clear " + instant_text(*event.end, zone) : "open", fmt::format("{:.2f}", event.peak),
        record.due ? ", answer due " + due_text(*record.due, zone) : "", answer_word(answer.state));
}

std::string text_of(const Json& json, const std::vector<EventAnswer>& events, const Zone& zone) {
    std::string text =
        fmt::format("{}: {} readings", json["site"].get<std::string>(), json["readings"].dump());
    for (const auto& [flag, n] : json["flags"].items())
        text += fmt::format(", flag {}: {}", flag, n.dump());
    text += "\n";
    for (const auto& month : json["completeness"]) {
        text += fmt::format("{}: {} of {:.0f} readings count", month["month"].get<std::string>(),
                            month["counted"].dump(), month["expected"].get<double>());
        if (month["calibration_expired"] != 0)
            text += fmt::format(", {} of an expired calibration", month["calibration_expired"].dump());
        text += "\n";
    }
    for (const auto& row : json["instruments"])
        text += fmt::format("instrument {} from {}, calibration holds until {}\n", row["serial"].dump(),
                            row["from"].dump(), row["expires"].dump());
    for (const auto& answer : events)
        text += event_text(answer, zone);
    if (events.empty()) text += "no trigger was passed\n";
    for (const auto& row : json["standing"])
        text += standing_text(row);
    return text;
}

/// Every reading with its flag and the statistic that the naming condition asks for, as it is printed.
std::function<void(const std::function<void(const Json&)>&)> series_list(
    const std::shared_ptr<TurbidityWatch>& watch, const std::string& site, const Span& span,
    const Zone& zone) {
    return [=](const std::function<void(const Json&)>& hand) {
        const SiteSeries& series = *watch->series(site);
        const auto* naming = watch->naming(site);
        std::optional<SiteStatistic> statistic;
        if (naming != nullptr)
            statistic.emplace(naming->trigger, site,
                              [&watch](const std::string& name) { return watch->series(name); });
        for (std::size_t i = 0; i < series.readings.size(); ++i) {
            const auto& reading = series.readings[i];
            if (!span.has(reading.time)) continue;
            // A statistic exists at the site's own present readings.
            const bool asked = statistic && reading.value;
            hand({{"time", instant_text(reading.time, zone)},
                  {"value", number_or_null(reading.value)},
                  {"flag", static_cast<int>(series.flags[i])},
                  {"calibration", text(calibration_at(watch->instruments(site), reading.time))},
                  {"statistic", asked ? number_or_null(statistic->at(reading.time)) : Json(nullptr)}});
        }
    };
}

Checked<Said> say_turbidity(const Reading& reading, const std::string& site, const Span& span) {
    const auto watch = std::make_shared<TurbidityWatch>(*reading.book, reading.season, reading.as_at);
    const Site* found = watch->site(site);
    if (found == nullptr)
        return Refusal{"no-such-row", "site " + site, "there is no such site",
                       labels_there_are(site, labels_of(watch->sites(), &Site::site))};
    const Zone& zone = reading.season.zone;
    const SiteSeries& series = *watch->series(site);
    const auto events = answers_at(*watch, reading, site, span);
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, zone);
    said.json["site"] = site;
    said.json["role"] = found->role.empty() ? Json(nullptr) : Json(found->role);
    said.json["unit"] = found->unit.empty() ? Json(nullptr) : Json(found->unit);
    said.json["interval_min"] = series.interval_min > 0 ? Json(series.interval_min) : Json(nullptr);
    said.json["readings"] = series.readings.size();
    said.json["flags"] = flags_json(series, span);
    said.json["statistic_of"] = condition_json(watch->naming(site));
    said.json["standing"] = standing_json(*watch, site, reading.as_at, zone);
    said.json["events"] = Json::array();
    for (const auto& answer : events)
        said.json["events"].push_back(answered_json(answer, zone));
    said.json["instruments"] = instruments_json(watch->instruments(site), zone);
    said.json["completeness"] = months_json(watch->months(site), span, zone);
    said.text = text_of(said.json, events, zone);
    for (const auto& refusal : watch->unread())
        print_notes({{refusal.where, refusal.what}});
    said.list_name = "series";
    said.list = series_list(watch, site, span, zone);
    return said;
}

struct Given {
    std::string site, from, to;
};

Checked<Said> answer(const Reading& reading, const Given& given) {
    Span span;
    for (const auto& [name, text, end] :
         {std::tuple("--from", &given.from, &span.from), std::tuple("--to", &given.to, &span.to)}) {
        if (text->empty()) continue;
        const auto at = time_given(name, *text, reading.season.zone);
        if (!at) return at.refusals();
        *end = *at;
    }
    return say_turbidity(reading, given.site, span);
}

}  // namespace

nlohmann::ordered_json event_json(const TriggerRecord& record, const Zone& zone) {
    const auto& rule = record.version().rule;
    Json row;
    row["consent"] = record.of->consent == nullptr ? Json(nullptr) : Json(record.of->consent->consent);
    row["condition"] = record.of->number;
    row["trigger"] = tier_json(rule.tier);
    row["tier"] = tier_json(rule.tier);
    row["site"] = record.event.site;
    row["state"] = record.event.end ? "closed" : "open";
    row["over_since"] = instant_text(record.event.over_since, zone);
    row["start"] = instant_text(record.event.start, zone);
    row["end"] = instant_or_null(record.event.end, zone);
    row["peak"] = record.event.peak;
    row["peak_at"] = instant_text(record.event.peak_at, zone);
    row["due"] = instant_or_null(record.due, zone);
    row["responses"] = Json::array();
    for (const auto& response : record.responses)
        row["responses"].push_back({{"action", response.action}, {"to", response.to}});
    return row;
}

void add_turbidity_commands(CLI::App& program, Options& options, Task& task) {
    add_solids_command(program, options, task);
    add_instrument_commands(program, options, task);
    auto given = std::make_shared<Given>();
    auto* command = add_command(program, options, "turbidity",
                                "readings of a site with their flags, the statistic, passed triggers");
    add_read_options(*command, options);
    command->add_option("--site", given->site, "the site")->required();
    command->add_option("--from", given->from, "readings from then on");
    command->add_option("--to", given->to, "readings until then");
    command->callback([&options, &task, given] {
        task = [&options, given] {
            return read_book(options, [&](const Reading& reading) { return answer(reading, *given); });
        };
    });
}

}  // namespace spoilbook
