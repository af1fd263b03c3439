// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/burndown.h"

#include <fmt/format.h>

#include "app/command/what_if.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Json day_or_null(const std::optional<Day>& day) {
    return day ? Json(day_text(*day)) : Json(nullptr);
}

Json dates_json(const Dates& dates) {
    return {
        {"p10", day_or_null(dates.p10)}, {"p50", day_or_null(dates.p50)}, {"p90", day_or_null(dates.p90)}};
}

Json limit_json(const LimitForecast& limit) {
    const LimitState& state = limit.state;
    Json row;
    row["consent"] = state.consent == nullptr ? Json(nullptr) : Json(state.consent->consent);
    row["condition"] = state.condition->condition;
    row["each"] = nullptr;
    if (state.member) {
        row["each"] = Json::object();
        row["each"][each_of_text(state.quantity.each_of)] =
            state.member->name.empty() ? Json(nullptr) : Json(state.member->name);
    }
    row.update(dates_json(limit.dates));
    row["p_before_target"] = number_or_null(limit.p_before_target);
    return row;
}

std::string what_comes(const ComesFirst& first, const Forecast& made) {
    switch (first.what) {
        case ComesFirst::What::target:
            return "the target";
        case ComesFirst::What::season:
            return "the season's end";
        case ComesFirst::What::nothing:
            return "nothing within the forecast";
        case ComesFirst::What::limit:
            break;
    }
    const auto& state = made.limits[first.limit].state;
    const std::string member = state.member ? " (" + state.member->name + ")" : "";
    return "condition " + state.condition->condition + member;
}

/// What a forecast says, without the days between.
void put_figures(Json& into, const Forecast& made) {
    into["left_m3"] = made.left_m3;
    into["left_m3_u"] = made.left_m3_u;
    into["target"] = dates_json(made.target);
    into["limits"] = Json::array();
    for (const auto& limit : made.limits)
        into["limits"].push_back(limit_json(limit));
    into["season_closes"] = day_or_null(made.season_closes);
    into["p_season_before_target"] = number_or_null(made.p_season_before_target);
    into["first"] = Json::array();
    for (const auto& first : made.first)
        into["first"].push_back({{"what", what_comes(first, made)}, {"p", first.p}});
}

std::string dates_line(const std::string& what, const Dates& dates) {
    const auto shown = [](const std::optional<Day>& day) { return day ? day_text(*day) : "not in sight"; };
    return fmt::format("{:<34} {:>12} {:>12} {:>12}\n", what, shown(dates.p10), shown(dates.p50),
                       shown(dates.p90));
}

double chance_of(const ComesFirst& asked, const Forecast& made) {
    for (const auto& first : made.first) {
        if (first.what == asked.what && first.limit == asked.limit) return first.p;
    }
    return 0;
}

/// Dates and order; below each line the one as logged, where there is another forecast.
std::string forecast_text(const Forecast& made, const Forecast* logged) {
    constexpr const char* below = "  as logged";
    std::string said = fmt::format("{:<34} {:>12} {:>12} {:>12}\n", "", "1 in 10", "even", "9 in 10");
    said += dates_line("target reached", made.target);
    if (logged != nullptr) said += dates_line(below, logged->target);
    for (std::size_t i = 0; i < made.limits.size(); ++i) {
        const Dates& dates = made.limits[i].dates;
        if (dates.reached <= 0 && (logged == nullptr || logged->limits[i].dates.reached <= 0)) continue;
        said += dates_line(what_comes({ComesFirst::What::limit, i, 0}, made) + " used up", dates);
        if (logged != nullptr) said += dates_line(below, logged->limits[i].dates);
    }
    if (made.season_closes) said += "all work is forbidden from " + day_text(*made.season_closes) + "\n";
    if (logged != nullptr && logged->season_closes && logged->season_closes != made.season_closes)
        said += "  as logged from " + day_text(*logged->season_closes) + "\n";
    for (const auto& first : made.first) {
        said += fmt::format("{} comes first: {} %", what_comes(first, made), chance_text(first.p));
        if (logged != nullptr)
            said += fmt::format(", as logged {} %", chance_text(chance_of(first, *logged)));
        said += "\n";
    }
    for (const auto& first : logged == nullptr ? std::vector<ComesFirst>() : logged->first) {
        if (chance_of(first, made) <= 0)
            said += fmt::format("{} comes first: 0 %, as logged {} %\n", what_comes(first, *logged),
                                chance_text(first.p));
    }
    return said;
}

void put_forecast(Said& said, const WorksForecast& answer, const ForecastAsked& asked, bool is_supposed) {
    const Forecast& made = answer.as_supposed;
    put_figures(said.json, made);
    said.json["fan"] = Json::array();
    for (const auto& day : made.fan) {
        said.json["fan"].push_back(
            {{"date", day_text(day.date)}, {"p10_m3", day.p10}, {"p50_m3", day.p50}, {"p90_m3", day.p90}});
    }
    said.json["seed"] = asked.seed;
    said.json["draws"] = asked.draws;
    said.json["weeks"] = made.weeks;
    said.json["as_logged"] = nullptr;
    if (is_supposed) put_figures(said.json["as_logged"], answer.as_logged);
    if (!made.why_none.empty()) {
        said.text += "no forecast: " + made.why_none + "\n";
        return;
    }
    said.text += forecast_text(made, is_supposed ? &answer.as_logged : nullptr);
    said.text += fmt::format("by {} draws of weeks from the last {} of the log, seed {}\n", asked.draws,
                             made.weeks, asked.seed);
}

/// What the command was given.
struct Asked {
    ForecastAsked forecast;
    WorksSupposed supposed;
};

Checked<Said> say_burndown(const Reading& reading, Asked given) {
    const auto& supposed = given.supposed;
    ForecastAsked& asked = given.forecast;
    asked.as_at = reading.as_at;
    const auto answer = what_if(*reading.ledger, asked, supposed);
    if (!answer) return answer.refusals();
    const auto burn = burndown(*reading.ledger, reading.as_at);
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["planned_m3"] = burn.planned_m3;
    said.json["dredged_m3"] = burn.dredged_m3;
    said.json["dredged_m3_u"] = burn.dredged_u_m3;
    said.json["unknown"] = burn.unknown;
    said.json["days"] = Json::array();
    for (const auto& day : burn.days) {
        said.json["days"].push_back({{"date", day_text(day.date)},
                                     {"remaining_m3", number_or_null(day.remaining_m3)},
                                     {"plan_m3", number_or_null(day.plan_m3)}});
    }
    said.text =
        fmt::format("planned {:.0f} m³ in situ, dredged {:.0f} ± {:.0f} m³, left {:.0f} m³\n",
                    burn.planned_m3, rounded_down(burn.dredged_m3, 0), rounded_up(burn.dredged_u_m3, 0),
                    rounded_up(burn.planned_m3 - burn.dredged_m3, 0));
    put_works(said, *answer, supposed);
    put_forecast(said, *answer, asked, !(supposed == WorksSupposed{}));
    return said;
}

}  // namespace

void add_burndown_command(CLI::App& program, Options& options, Task& task) {
    auto asked = std::make_shared<Asked>();
    auto* burn = add_command(program, options, "burndown", "plan and done, day by day, and what comes first");
    add_read_options(*burn, options);
    burn->add_option("--seed", asked->forecast.seed, "of the draws; the same seed gives the same forecast");
    burn->add_option("--draws", asked->forecast.draws, "how many")->check(CLI::Range(100, 100000));
    burn->add_option("--weeks", asked->forecast.weeks, "newest weeks of the log to draw from")
        ->check(CLI::Range(4, 520));
    add_what_if_options(*burn, asked->supposed);
    burn->callback([&options, &task, asked] {
        task = [&options, asked] {
            return read_book(options, [&](const Reading& reading) { return say_burndown(reading, *asked); });
        };
    });
}

}  // namespace spoilbook
