// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <cmath>

#include "app/command/command.h"
#include "model/answer/checked_release.h"
#include "model/answer/named_cell.h"
#include "model/consent/largest_load.h"
#include "model/folder/nearest.h"
#include "model/unit/number_text.h"
#include "model/unit/position_text.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

/// What was typed about the planned release.
struct Asked {
    std::string load, at, ground, cell;
    std::optional<double> lat, lon, wave_height_m;
    double position_u_m = 0;
};

Refusal unknown(const std::string& option, const std::string& name, const std::vector<std::string>& known) {
    return {"unknown-reference", option, "there is no \"" + name + "\"", labels_there_are(name, known)};
}

template <class R>
Checked<Id> id_of(const Shelf<R>& shelf, std::string R::*member, const std::string& name,
                  const std::string& option) {
    for (const auto& row : shelf.rows()) {
        if (row.*member == name) return row.id;
    }
    return unknown(option, name, labels_of(shelf.rows(), member));
}

/// Several grounds may have a cell of one name: then the ground says which.
Checked<Id> cell_of(const Season& season, const std::string& name, const Id& ground) {
    const auto found = cells_named(season, name, ground);
    if (found.empty()) {
        std::vector<std::string> known;
        for (const auto& cell : season.cells.rows()) {
            if (cell.kind != "exclusion" && (!ground || cell.ground == ground)) known.push_back(cell.cell);
        }
        return unknown("--cell", name, known);
    }
    if (found.size() == 1) return found.front()->id;
    return Refusal{"ambiguous", "--cell", "several grounds have a cell \"" + name + "\"",
                   "give --ground, or write it as GROUND/CELL"};
}

/// A number within its range; NaN and infinity, which compare as no number does, are none.
CLI::Validator number_from(double low, double high) {
    return {[low, high](const std::string& text) {
                const auto number = parse_number(text);
                if (number && *number >= low && *number <= high) return std::string();
                return fmt::format("\"{}\" is no number from {} to {}", text, low, high);
            },
            fmt::format("{} to {}", low, high)};
}

/// Degrees as people write them, from -limit to limit; the option gets them as one number.
CLI::Validator degrees_on(Axis axis, double limit) {
    return {[axis, limit](std::string& text) {
                const auto degrees = parse_degrees(text, axis);
                if (!degrees) return one_line(degrees.refusals().front());
                if (std::abs(*degrees) > limit)
                    return fmt::format("\"{}\" is no number from {} to {}", text, -limit, limit);
                text = number_text(*degrees);
                return std::string();
            },
            fmt::format("{} to {}", -limit, limit)};
}

Checked<PlannedRelease> planned_from(const Asked& asked, const Season& season) {
    PlannedRelease planned;
    const auto load = id_of(season.loads, &Load::load, asked.load, "--load");
    if (!load) return load.refusals();
    planned.load = *load;
    const auto at = time_given("--at", asked.at, season.zone);
    if (!at) return at.refusals();
    planned.at = *at;
    if (!asked.ground.empty()) {
        const auto ground = id_of(season.grounds, &Ground::ground, asked.ground, "--ground");
        if (!ground) return ground.refusals();
        planned.ground = *ground;
    }
    if (!asked.cell.empty()) {
        const auto cell = cell_of(season, asked.cell, planned.ground);
        if (!cell) return cell.refusals();
        planned.cell = *cell;
    }
    planned.lat = asked.lat;
    planned.lon = asked.lon;
    planned.position_u_m = asked.position_u_m;
    planned.wave_height_m = asked.wave_height_m;
    return planned;
}

/// The largest load that still fits, for people rounded so that no limit is passed.
void say_largest(const std::optional<LargestLoad>& largest, const Season& season, Said& said) {
    const auto of = [&](std::optional<double> LargestLoad::*member) {
        return largest ? number_or_null((*largest).*member) : Json(nullptr);
    };
    said.json["largest_in_situ_m3"] = of(&LargestLoad::in_situ_m3);
    said.json["largest_hopper_m3"] = largest ? Json(largest->hopper_m3) : Json(nullptr);
    said.json["largest_buckets"] = of(&LargestLoad::buckets);
    said.json["largest_ullage_m"] = of(&LargestLoad::ullage_m);
    said.json["largest_bound_by"] = nullptr;
    said.json["largest_untold"] = Json::array();
    if (!largest) return;
    for (const auto* condition : largest->untold)
        said.json["largest_untold"].push_back(condition->condition);
    const Condition* bound = largest->bound_by;
    if (bound == nullptr) return;
    const Consent* consent = season.consents.find(bound->consent);
    said.json["largest_bound_by"] = {{"consent", consent == nullptr ? Json(nullptr) : Json(consent->consent)},
                                     {"condition", bound->condition}};
    said.text +=
        fmt::format("  largest load that fits: {:.0f} m³ hopper", rounded_down(largest->hopper_m3, 0));
    if (largest->in_situ_m3)
        said.text += fmt::format(", {:.0f} m³ in situ", rounded_down(*largest->in_situ_m3, 0));
    if (largest->buckets) said.text += fmt::format(", {:.0f} buckets", rounded_down(*largest->buckets, 0));
    if (largest->ullage_m)
        said.text += fmt::format(", stop at ullage {:.2f} m", rounded_up(*largest->ullage_m, 2));
    said.text += fmt::format(" (condition {})\n", bound->condition);
}

Said say_check(const ReleaseCheck& check, const Asked& asked, const Zone& zone) {
    Said said;
    said.json["load"] = asked.load;
    said.json["verdict"] = check_text(check.verdict);
    said.json["reasons"] = Json::array();
    said.text = fmt::format("load {} at {}: {}\n", asked.load, asked.at, in_words(check_text(check.verdict)));
    for (const auto& reason : check.reasons) {
        said.json["reasons"].push_back(
            {{"consent", reason.consent == nullptr ? Json(nullptr) : Json(reason.consent->consent)},
             {"condition", reason.condition->condition},
             {"state", check_text(reason.state)},
             {"until", instant_or_null(reason.until, zone)},
             {"why", reason.why}});
        said.text += fmt::format("  {} condition {} ({}): {}{}\n", in_words(check_text(reason.state)),
                                 reason.condition->condition, reason.condition->text, reason.why,
                                 reason.until ? ", until " + instant_text(*reason.until, zone) : "");
    }
    said.json["to_do"] = Json::array();
    for (const auto& task : check.to_do) {
        said.json["to_do"].push_back(
            {{"consent", task.consent == nullptr ? Json(nullptr) : Json(task.consent->consent)},
             {"condition", task.condition->condition},
             {"from", instant_text(task.from, zone)},
             {"what", task.what}});
        said.text += fmt::format("  to do for condition {} ({}): {} from {}\n", task.condition->condition,
                                 task.condition->text, task.what, instant_text(task.from, zone));
    }
    said.json["due_cell"] = check.due_cell.empty() ? Json(nullptr) : Json(check.due_cell);
    if (!check.due_cell.empty()) said.text += "  cell due next: " + check.due_cell + "\n";
    return said;
}

Said say_answer(const ReleaseCheck& check, const PlannedRelease& planned, const Asked& asked,
                const Ledger& ledger) {
    const Season& season = ledger.season();
    Said said = say_check(check, asked, season.zone);
    say_largest(largest_load(ledger, planned), season, said);
    said.text += "Whether she sails is the master's; the consent's text prevails.\n";
    return said;
}

}  // namespace

void add_check_command(CLI::App& program, Options& options, Task& task) {
    auto asked = std::make_shared<Asked>();
    auto* check =
        add_command(program, options, "release-check", "does anything in the consent stop this release");
    add_read_options(*check, options);
    check->add_option("--load", asked->load, "the load about to go")->required();
    check->add_option("--at", asked->at, "when the doors would open")->required();
    auto* lat = check->add_option("--lat", asked->lat, "latitude, WGS 84: -41.20575 or 41°12.345'S")
                    ->transform(degrees_on(Axis::latitude, 90));
    auto* lon = check->add_option("--lon", asked->lon, "longitude, WGS 84: 174.92797 or 174°55.678'E")
                    ->transform(degrees_on(Axis::longitude, 180));
    lat->needs(lon);
    lon->needs(lat);
    check->add_option("--position-u", asked->position_u_m, "standard uncertainty of the position, m")
        ->check(number_from(0, 100000));
    check->add_option("--ground", asked->ground, "the ground");
    check->add_option("--cell", asked->cell, "the cell; its point farthest from any edge is judged");
    check->add_option("--wave-height", asked->wave_height_m, "significant wave height, m")
        ->check(number_from(0, 30));
    check->callback([&options, &task, asked] {
        task = [&options, asked] {
            const auto answer = [&](const Reading& reading) -> Checked<Said> {
                const auto planned = planned_from(*asked, reading.season);
                if (!planned) return planned.refusals();
                const auto checked = checked_release(*reading.book, *reading.ledger, *planned, reading.as_at);
                if (!checked) return checked.refusals();
                return say_answer(*checked, *planned, *asked, *reading.ledger);
            };
            return read_book(options, answer, AsAt::rows);
        };
    });
}

}  // namespace spoilbook
