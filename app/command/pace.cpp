// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/pace.h"

#include <fmt/format.h>

#include "model/progress/productivity.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

/// What --by asks for: hours over what, and causes apart.
struct Asked {
    HoursOver over = HoursOver::all;
    std::string over_name;
    bool by_cause = false;
};

Asked asked_from(const std::vector<std::string>& names, bool causes) {
    Asked asked;
    for (const auto& name : names) {
        if (causes && name == "cause") {
            asked.by_cause = true;
            continue;
        }
        const bool known = name == "month" || name == "week" || name == "shift";
        if (!known || (!asked.over_name.empty() && asked.over_name != name))
            throw CLI::ValidationError("--by", known ? "month, week and shift do not go together"
                                                     : "\"" + name + "\" is not one of " +
                                                           (causes ? "cause, " : "") + "month, week, shift");
        asked.over_name = name;
        asked.over = name == "month" ? HoursOver::month : name == "week" ? HoursOver::week : HoursOver::shift;
    }
    return asked;
}

Json key_json(const Asked& asked, const HoursRow& row) {
    Json line = Json::object();
    if (!asked.over_name.empty()) line[asked.over_name] = row.key;
    return line;
}

void put_hours(Json& line, const HoursRow& row) {
    line["shifts"] = row.shifts.size();
    line["shift_h"] = row.shift_h;
    line["operating_h"] = row.digging_h;
    line["delay_h"] = row.delay_h();
    line["not_accounted_h"] = row.not_accounted_h;
}

Json cause_json(Json line, const HoursRow& row, const CauseHours& cause) {
    line["cause"] = cause.cause.empty() ? Json(nullptr) : Json(cause.cause);
    line["hours"] = cause.hours;
    line["share"] = row.share(cause.hours);
    line["delays"] = cause.delays.size();
    return line;
}

std::string hours_line(const std::string& what, const HoursRow& row, double hours) {
    return fmt::format("  {:<26} {:>9.1f} h {:>6.1f} %\n", what, hours, 100 * row.share(hours));
}

void say_row(const Asked& asked, const HoursRow& row, Said& said) {
    Json line = key_json(asked, row);
    put_hours(line, row);
    said.json["rows"].push_back(std::move(line));
    said.text += fmt::format("{}{} shifts, {:.1f} h\n", row.key.empty() ? "" : row.key + ": ",
                             row.shifts.size(), row.shift_h);
    said.text += hours_line("digging", row, row.digging_h);
    if (!asked.by_cause) said.text += hours_line("delays", row, row.delay_h());
    for (const auto& cause : row.causes) {
        if (!asked.by_cause) break;
        said.json["causes"].push_back(cause_json(key_json(asked, row), row, cause));
        said.text += hours_line(cause.cause.empty() ? "no cause recorded" : cause.cause, row, cause.hours);
    }
    said.text += hours_line("not accounted for", row, row.not_accounted_h);
}

Checked<Said> say_delays(const Reading& reading, const Asked& asked) {
    const auto hours = season_hours(reading.season, reading.as_at);
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["rows"] = Json::array();
    if (asked.by_cause) said.json["causes"] = Json::array();
    for (const auto& row : hours_over(hours, reading.season.zone, asked.over))
        say_row(asked, row, said);
    said.json["delays_left_out"] = hours.delays_left_out;
    if (hours.delays_left_out > 0)
        said.text +=
            fmt::format("{} delays name no start or no shift and are left out\n", hours.delays_left_out);
    return said;
}

std::string spread_text(const std::string& what, const std::optional<Spread>& spread) {
    if (!spread) return fmt::format("{:<14} not logged\n", what);
    return fmt::format("{:<14} median {:.0f} min, 8 in 10 from {:.0f} to {:.0f}, of {}\n", what,
                       spread->median, spread->p10, spread->p90, spread->n);
}

void say_productivity_row(const Asked& asked, const ProductivityRow& row, Said& said) {
    Json line = key_json(asked, row.time);
    put_hours(line, row.time);
    line["efficiency"] = row.efficiency();
    line["loads"] = row.loads.size();
    line["unknown"] = row.unknown;
    put_estimate(line, "in_situ_m3", row.in_situ_m3);
    put_estimate(line, "in_situ_m3_per_operating_h", row.per_operating_hour());
    put_estimate(line, "in_situ_m3_per_shift", row.per_shift());
    said.json["rows"].push_back(std::move(line));
    said.text += fmt::format("{}{} loads, {} m³ in situ, {:.1f} operating hours of {:.1f} ({:.0f} %)",
                             row.time.key.empty() ? "" : row.time.key + ": ", row.loads.size(),
                             with_u(row.in_situ_m3.value, row.in_situ_m3.u(), 0), row.time.digging_h,
                             row.time.shift_h, 100 * row.efficiency());
    if (const auto rate = row.per_operating_hour())
        said.text += fmt::format(", {} m³ an operating hour", with_u(rate->value, rate->u(), 1));
    if (const auto rate = row.per_shift())
        said.text += fmt::format(", {} m³ a shift", with_u(rate->value, rate->u(), 0));
    said.text += row.unknown > 0 ? fmt::format(", {} loads unknown\n", row.unknown) : "\n";
}

void say_buckets(const std::vector<BucketRow>& buckets, Said& said) {
    said.json["buckets"] = Json::array();
    for (const auto& row : buckets) {
        Json line;
        line["bucket"] = row.bucket->name;
        line["buckets"] = row.buckets;
        line["operating_h"] = row.operating_h;
        line["cycle_s"] = number_or_null(row.cycle_s());
        put_estimate(line, "in_situ_m3", row.in_situ_m3);
        put_estimate(line, "in_situ_m3_per_bucket_h", row.per_hour());
        line["hopper_m3_per_bucket_h_by_tally"] = number_or_null(row.hopper_m3_per_hour());
        said.json["buckets"].push_back(std::move(line));
        if (const auto rate = row.per_hour())
            said.text += fmt::format("bucket {}: {} m³ in situ an hour, one in {:.0f} s\n", row.bucket->name,
                                     with_u(rate->value, rate->u(), 1), row.cycle_s().value_or(0));
    }
}

void say_pace(const Pace& found, Said& said) {
    said.json["pace"] = pace_json(found);
    said.json["pace"]["loads_per_shift_h"] = number_or_null(found.measured);
    said.text += spread_text("filling", found.fill) + spread_text("barge change", found.change) +
                 spread_text("round trip", found.round_trip);
    if (!found.governs()) return;
    said.text += fmt::format(
        "loads an hour at most: dredger {:.2f}, tugs ({}) {:.2f}, barges ({}) {:.2f}; least: {}\n",
        *found.by_dredger, found.tugs, *found.by_tugs, found.barges, *found.by_barges,
        text(*found.governs()));
    if (found.measured)
        said.text += fmt::format("measured: {:.2f} loads a shift hour over the newest {}\n", *found.measured,
                                 found.loads);
}

Checked<Said> say_productivity(const Reading& reading, const Asked& asked) {
    const auto hours = season_hours(reading.season, reading.as_at);
    const auto made = productivity(*reading.ledger, hours, reading.as_at, asked.over);
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["rows"] = Json::array();
    for (const auto& row : made.rows)
        say_productivity_row(asked, row, said);
    said.json["outside_shifts"] = made.outside_shifts;
    if (made.outside_shifts > 0)
        said.text += fmt::format("{} loads were full in no shift and are left out\n", made.outside_shifts);
    say_buckets(productivity_by_bucket(*reading.ledger, hours, reading.as_at), said);
    const auto steps = spread_of(positionings(reading.season, hours));
    said.json["positioning_min"] = spread_json(steps);
    said.text += spread_text("positioning", steps);
    say_pace(pace(reading.season, hours, reading.as_at), said);
    return said;
}

using Saying = Checked<Said> (*)(const Reading&, const Asked&);

void add_hours_command(CLI::App& program, Options& options, Task& task, const char* name, const char* summary,
                       Saying saying, bool causes) {
    auto by = std::make_shared<std::vector<std::string>>();
    auto* command = add_command(program, options, name, summary);
    add_read_options(*command, options);
    command->add_option("--by", *by, causes ? "cause, and one of month, week, shift" : "month, week or shift")
        ->delimiter(',');
    command->callback([&options, &task, by, saying, causes] {
        const Asked asked = asked_from(*by, causes);
        task = [&options, asked, saying] {
            return read_book(options, [&](const Reading& reading) { return saying(reading, asked); });
        };
    });
}

}  // namespace

Json spread_json(const std::optional<Spread>& spread) {
    if (!spread) return nullptr;
    return {{"n", spread->n}, {"p10", spread->p10}, {"median", spread->median}, {"p90", spread->p90}};
}

Json pace_json(const Pace& pace) {
    return {{"loads", pace.loads},
            {"fill_min", spread_json(pace.fill)},
            {"change_min", spread_json(pace.change)},
            {"round_trip_min", spread_json(pace.round_trip)},
            {"tugs", pace.tugs},
            {"barges", pace.barges},
            {"loads_per_h_dredger", number_or_null(pace.by_dredger)},
            {"loads_per_h_tugs", number_or_null(pace.by_tugs)},
            {"loads_per_h_barges", number_or_null(pace.by_barges)},
            {"loads_per_h_least", number_or_null(pace.least())},
            {"governs", pace.governs() ? Json(text(*pace.governs())) : Json(nullptr)}};
}

void add_pace_commands(CLI::App& program, Options& options, Task& task) {
    add_hours_command(program, options, task, "delays", "where the hours of the shifts went", say_delays,
                      true);
    add_hours_command(program, options, task, "productivity", "what an hour of digging brings, and who waits",
                      say_productivity, false);
}

}  // namespace spoilbook
