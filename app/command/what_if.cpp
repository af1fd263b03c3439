// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/what_if.h"

#include <fmt/format.h>

#include "app/command/pace.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

void add_day(CLI::App& command, const std::string& name, std::optional<Day>& day,
             const std::string& summary) {
    command.add_option_function<std::string>(
        name,
        [&day, name](const std::string& text) {
            const auto read = parse_day(text);
            if (!read) throw CLI::ValidationError(name, "\"" + text + "\" is not a day such as 2026-06-30");
            day = *read;
        },
        summary);
}

Json works_json(const Pace& pace, const std::optional<ShiftPattern>& pattern) {
    Json works = pace_json(pace);
    works["shift_hours_a_day"] = pattern ? Json(pattern->hours_a_day) : Json(nullptr);
    works["shift_days_a_week"] = pattern ? Json(pattern->days_a_week) : Json(nullptr);
    return works;
}

std::string number(const std::optional<double>& value, int decimals) {
    return value ? fmt::format("{:.{}f}", *value, decimals) : "not logged";
}

std::string line(const std::string& what, const std::string& logged, const std::string& supposed) {
    return fmt::format("{:<34} {:>12} {:>12}\n", what, logged, supposed);
}

std::string held_up_by(const Pace& pace) {
    return pace.governs() ? text(*pace.governs()) : "not logged";
}

/// Both side by side.
std::string works_text(const WorksLogged& logged, const WorksToBe& to_be) {
    std::string said = line("", "as logged", "what if");
    const auto both = [&](const std::string& what, const auto& figure_of, int decimals) {
        said += line(what, number(figure_of(logged), decimals), number(figure_of(to_be), decimals));
    };
    using Figure = std::optional<double>;
    both(
        "barges", [](const auto& works) { return Figure(works.pace.barges); }, 0);
    both(
        "tugs", [](const auto& works) { return Figure(works.pace.tugs); }, 0);
    both(
        "round trip, min",
        [](const auto& works) {
            return works.pace.round_trip ? Figure(works.pace.round_trip->median) : std::nullopt;
        },
        0);
    both(
        "loads an hour at most: dredger", [](const auto& works) { return works.pace.by_dredger; }, 3);
    both(
        "  tugs", [](const auto& works) { return works.pace.by_tugs; }, 3);
    both(
        "  barges", [](const auto& works) { return works.pace.by_barges; }, 3);
    said += line("loads are held up by", held_up_by(logged.pace), held_up_by(to_be.pace));
    both(
        "shift hours a day",
        [](const auto& works) { return works.pattern ? Figure(works.pattern->hours_a_day) : std::nullopt; },
        1);
    both(
        "days a week with a shift",
        [](const auto& works) { return works.pattern ? Figure(works.pattern->days_a_week) : std::nullopt; },
        1);
    const double factor = to_be.supposed.rate_factor * to_be.supposed.hours_factor;
    return said + line("in-situ m³ a week, times", "1.000", number(factor, 3));
}

std::string pace_text(const WorksLogged& logged) {
    const auto least = logged.pace.least();
    if (!least) return "what holds the loads up is not in the log: " + logged.why_no_pace() + "\n";
    return fmt::format("loads an hour at most {:.2f}, held up by the {} (the newest {} loads)\n", *least,
                       text(*logged.pace.governs()), logged.pace.loads);
}

}  // namespace

void add_what_if_options(CLI::App& command, WorksSupposed& supposed) {
    command.add_option("--barges", supposed.barges, "what if: so many barges")->check(CLI::Range(1, 100));
    command.add_option("--tugs", supposed.tugs, "what if: so many tugs")->check(CLI::Range(1, 100));
    command.add_option("--shift-hours", supposed.hours_a_day, "what if: shift hours of a day with a shift")
        ->check(CLI::Range(0.1, 24.0));
    command.add_option("--days-a-week", supposed.days_a_week, "what if: days a week with a shift")
        ->check(CLI::Range(0.1, 7.0));
    command
        .add_option("--longer-round-trip", supposed.round_trip_more_min,
                    "what if: minutes that a round trip takes longer; negative: less")
        ->check(CLI::Range(-10000.0, 10000.0));
    command
        .add_option("--longer-haul", supposed.haul_more_km,
                    "what if: km one way that the ground is farther, towed as logged; negative: nearer")
        ->check(CLI::Range(-1000.0, 1000.0));
    auto& others = supposed.others;
    add_day(command, "--season-opens", others.season_opens,
            "what if: first day on which work is allowed again");
    add_day(command, "--season-closes", others.season_closes,
            "what if: first day to come on which all work is forbidden");
    command.add_option("--rate-factor", others.rate_factor, "what if: in-situ m³ a filling hour, times this")
        ->check(CLI::Range(0.01, 100.0));
    command.add_option("--hours-factor", others.hours_factor, "what if: filling hours a day, times this")
        ->check(CLI::Range(0.01, 100.0));
    command
        .add_option("--over-dredge-share", others.over_dredge_share,
                    "dug below the design, of what is dredged")
        ->check(CLI::Range(0.0, 0.9));
    command.add_option("--over-dredge-share-u", others.over_dredge_share_u, "its standard uncertainty")
        ->check(CLI::Range(0.0, 0.9));
}

void put_works(Said& said, const WorksForecast& answer, const WorksSupposed& supposed) {
    const auto& logged = answer.logged;
    Json works = works_json(logged.pace, logged.pattern);
    const auto& tow = logged.tow;
    works["tow_km_h_out"] = spread_json(tow ? std::optional(tow->out_km_h) : std::nullopt);
    works["tow_km_h_home"] = spread_json(tow ? std::optional(tow->home_km_h) : std::nullopt);
    works["why_no_pace"] = text_or_null(logged.why_no_pace());
    said.json["works"] = std::move(works);
    said.json["what_if"] = nullptr;
    if (supposed == WorksSupposed{}) {
        said.text += pace_text(logged);
        return;
    }
    const auto& to_be = answer.to_be;
    Json what_if = works_json(to_be.pace, to_be.pattern);
    what_if["round_trip_more_min"] = to_be.round_trip_more_min;
    what_if["rate_factor"] = to_be.supposed.rate_factor;
    what_if["hours_factor"] = to_be.supposed.hours_factor;
    what_if["over_dredge_share"] = to_be.supposed.over_dredge_share;
    said.json["what_if"] = std::move(what_if);
    said.text += works_text(logged, to_be);
}

}  // namespace spoilbook
