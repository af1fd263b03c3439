// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/burndown.h"

#include <fmt/format.h>

#include "app/command/command.h"
#include "model/progress/forecast.h"
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

void put_forecast(Said& said, const Forecast& made, const ForecastAsked& asked) {
    said.json["left_m3"] = made.left_m3;
    said.json["left_m3_u"] = made.left_m3_u;
    said.json["target"] = dates_json(made.target);
    said.json["limits"] = Json::array();
    for (const auto& limit : made.limits)
        said.json["limits"].push_back(limit_json(limit));
    said.json["season_closes"] = day_or_null(made.season_closes);
    said.json["p_season_before_target"] = number_or_null(made.p_season_before_target);
    said.json["first"] = Json::array();
    for (const auto& first : made.first)
        said.json["first"].push_back({{"what", what_comes(first, made)}, {"p", first.p}});
    said.json["fan"] = Json::array();
    for (const auto& day : made.fan) {
        said.json["fan"].push_back(
            {{"date", day_text(day.date)}, {"p10_m3", day.p10}, {"p50_m3", day.p50}, {"p90_m3", day.p90}});
    }
    said.json["seed"] = asked.seed;
    said.json["draws"] = asked.draws;
    said.json["weeks"] = made.weeks;
    if (!made.why_none.empty()) {
        said.text += "no forecast: " + made.why_none + "\n";
        return;
    }
    const auto shown = [](const std::optional<Day>& day) { return day ? day_text(*day) : "not in sight"; };
    const auto line = [&](const std::string& what, const Dates& dates) {
        said.text += fmt::format("{:<34} {:>12} {:>12} {:>12}\n", what, shown(dates.p10), shown(dates.p50),
                                 shown(dates.p90));
    };
    said.text += fmt::format("{:<34} {:>12} {:>12} {:>12}\n", "", "1 in 10", "even", "9 in 10");
    line("target reached", made.target);
    for (std::size_t i = 0; i < made.limits.size(); ++i) {
        if (made.limits[i].dates.reached > 0)
            line(what_comes({ComesFirst::What::limit, i, 0}, made) + " used up", made.limits[i].dates);
    }
    if (made.season_closes) said.text += "all work is forbidden from " + day_text(*made.season_closes) + "\n";
    for (const auto& first : made.first)
        said.text += fmt::format("{} comes first: {} %\n", what_comes(first, made), chance_text(first.p));
    said.text += fmt::format("by {} draws of weeks from the last {} of the log, seed {}\n", asked.draws,
                             made.weeks, asked.seed);
}

Checked<Said> say_burndown(const Reading& reading, ForecastAsked asked) {
    asked.as_at = reading.as_at;
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
    put_forecast(said, forecast(*reading.ledger, asked), asked);
    return said;
}

}  // namespace

void add_burndown_command(CLI::App& program, Options& options, Task& task) {
    auto asked = std::make_shared<ForecastAsked>();
    auto* burn = add_command(program, options, "burndown", "plan and done, day by day, and what comes first");
    add_read_options(*burn, options);
    burn->add_option("--seed", asked->seed, "of the draws; the same seed gives the same forecast");
    burn->add_option("--draws", asked->draws, "how many")->check(CLI::Range(100, 100000));
    burn->add_option("--weeks", asked->weeks, "newest weeks of the log to draw from")
        ->check(CLI::Range(4, 520));
    auto& supposed = asked->supposed;
    burn->add_option("--rate-factor", supposed.rate_factor, "what if: in-situ m³ a filling hour, times this")
        ->check(CLI::Range(0.01, 100.0));
    burn->add_option("--hours-factor", supposed.hours_factor, "what if: filling hours a day, times this")
        ->check(CLI::Range(0.01, 100.0));
    burn->add_option("--over-dredge-share", supposed.over_dredge_share,
                     "dug below the design, of what is dredged")
        ->check(CLI::Range(0.0, 0.9));
    burn->add_option("--over-dredge-share-u", supposed.over_dredge_share_u, "its standard uncertainty")
        ->check(CLI::Range(0.0, 0.9));
    burn->callback([&options, &task, asked] {
        task = [&options, asked] {
            return read_book(options, [&](const Reading& reading) { return say_burndown(reading, *asked); });
        };
    });
}

}  // namespace spoilbook
