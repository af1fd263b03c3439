// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "app/command/condition_rows.h"
#include "app/command/figures_text.h"
#include "app/command/tracks.h"
#include "model/answer/release_places.h"
#include "model/answer/volumes.h"
#include "model/consent/limit.h"
#include "model/unit/time_text.h"
#include "model/volume/load_notes.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Checked<Said> say_headroom(const Reading& reading) {
    Said said;
    Refusals refusals;
    const auto states = limits_at(*reading.ledger, reading.as_at, &refusals);
    if (!refusals.empty()) return refusals;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["limits"] = Json::array();
    for (const auto& state : states)
        said.json["limits"].push_back(limit_json(state, reading.season.zone));
    said.text = headroom_text(states, reading.as_at, reading.season);
    return said;
}

Json amounts_json(const Amounts& amounts, Json row) {
    put_estimate(row, "hopper_m3", amounts.hopper_m3);
    put_estimate(row, "in_situ_m3", amounts.in_situ_m3);
    put_estimate(row, "wet_t", amounts.wet_t);
    put_estimate(row, "dry_t", amounts.dry_t);
    return row;
}

Checked<std::vector<GroupBy>> groups_from(const std::vector<std::string>& names) {
    std::vector<GroupBy> groups;
    for (const auto& name : names) {
        const auto group = group_named(name);
        if (!group)
            throw CLI::ValidationError(
                "--by", "\"" + name + "\" is not one of claim, month, ground, cell, material, barge");
        groups.push_back(*group);
    }
    return groups;
}

Checked<Said> say_volumes(const Reading& reading, const std::vector<GroupBy>& by) {
    Said said;
    const auto rows = volumes(*reading.ledger, reading.as_at, by);
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["rows"] = Json::array();
    for (const auto& row : rows) {
        Json line;
        for (std::size_t i = 0; i < by.size(); ++i)
            line[group_text(by[i])] = row.keys[i] ? Json(*row.keys[i]) : Json(nullptr);
        line["loads"] = row.loads;
        line["trips"] = row.trips;
        line = amounts_json(row.amounts, std::move(line));
        line["unknown"] = row.unknown;
        said.json["rows"].push_back(std::move(line));
    }
    said.text = volumes_text(rows, by);
    return said;
}

Json method_json(const MethodResult& method, const Sources& sources) {
    Json row;
    row["method"] = method_name(method.method);
    row = amounts_json(method, std::move(row));
    row["assumed"] = Json::array();
    for (const auto& sentence : method.assumed)
        row["assumed"].push_back(sentence);
    row["versions"] = Json::array();
    for (const auto source : method.versions)
        row["versions"].push_back(sources.name(source));
    row["facts"] = Json::object();
    for (const auto& fact : method.facts)
        row["facts"][std::string(fact.name)] = fact.value;
    return row;
}

Json parts_json(const LoadFigures& figures, const Season& season) {
    Json parts = Json::array();
    for (const auto& part : figures.parts) {
        const auto* claim = season.claims.find(part.claim);
        const auto* material = season.materials.find(part.material);
        parts.push_back({{"claim", claim == nullptr ? Json(nullptr) : Json(claim->claim)},
                         {"material", material == nullptr ? Json(nullptr) : Json(material->material)},
                         {"hopper_share", part.hopper_share},
                         {"in_situ_share", number_or_null(part.in_situ_share)}});
    }
    return parts;
}

Checked<Said> say_load(const Reading& reading, const std::string& label) {
    for (const auto& load : reading.season.loads.rows()) {
        if (load.load != label) continue;
        const auto& figures = *reading.ledger->figures_of(load.id);
        const auto* counted = figures.counted_by();
        Said said;
        said.json["load"] = label;
        said.json["counted_by"] = counted == nullptr ? Json(nullptr) : Json(method_name(counted->method));
        said.json["methods"] = Json::array();
        for (const auto& method : figures.methods)
            said.json["methods"].push_back(method_json(method, reading.ledger->sources()));
        said.json["parts"] = parts_json(figures, reading.season);
        said.json["left_out"] = Json::array();
        for (const auto& left : figures.left_out) {
            said.json["left_out"].push_back({{"method", method_name(left.method)}, {"why", left.why}});
        }
        said.json["agreements"] = Json::array();
        for (const auto& pair : figures.agreements) {
            said.json["agreements"].push_back({{"a", method_name(pair.a)},
                                               {"b", method_name(pair.b)},
                                               {"measure", measure_name(pair.measure)},
                                               {"e_n", pair.e_n},
                                               {"disagree", pair.disagree()}});
        }
        const auto notes = load_notes(reading.ledger->loads(), load, figures);
        said.json["notes"] = Json::array();
        for (const auto& note : notes)
            said.json["notes"].push_back(note.what);
        said.text = load_text(load, figures, notes, reading.season);
        return said;
    }
    return Refusal{"no-such-row", "load " + label, "there is no such load by then", "look its number up"};
}

Checked<Said> say_releases(const Reading& reading, const Options& options) {
    Said said;
    auto tracks = tracks_of(reading, options);
    const auto places = release_places(*reading.ledger, reading.as_at, &tracks);
    std::unordered_map<const ReleaseView*, const LedgerLine*> lines;
    for (const auto& line : reading.ledger->released())
        lines.emplace(line.release, &line);
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["rows"] = Json::array();
    const PlaceConditions conditions(*reading.ledger);
    for (const auto& place : places) {
        const auto* ground = reading.season.grounds.find(place.ground);
        const auto* cell = reading.season.cells.find(place.cell);
        const auto line = lines.find(place.release);
        const auto findings = line == lines.end()
                                  ? std::vector<PlaceFinding>()
                                  : conditions.judge(*line->second, place, tracks.of(*place.release->trip));
        said.json["rows"].push_back(
            {{"trip", place.release->trip->trip},
             {"release", place.release->row == nullptr ? Json(nullptr) : Json(place.release->row->release)},
             {"release_end", instant_text(*place.release->ended, reading.season.zone)},
             {"verdict", text(place.verdict)},
             {"distance_to_boundary_m", number_or_null(place.distance_m)},
             {"position_u_m", place.distance_m ? Json(place.position_u_m) : Json(nullptr)},
             {"position_u_assumed", place.distance_m && place.u_assumed},
             {"ground", ground == nullptr ? Json(nullptr) : Json(ground->ground)},
             {"cell", cell == nullptr ? Json(nullptr) : Json(cell->cell)},
             {"place_from", !place.place ? Json(nullptr) : Json(place.by_track ? "track" : "logged")},
             {"left_ground_doors_open", place.left_ground},
             {"conditions", findings_json(findings)},
             {"why", place.why.empty() ? Json(nullptr) : Json(place.why)}});
    }
    said.text = releases_text(places, reading.season);
    return said;
}

}  // namespace

void add_figure_commands(CLI::App& program, Options& options, Task& task) {
    auto* headroom = add_command(program, options, "headroom", "what is left of every limit");
    add_read_options(*headroom, options);
    headroom->callback([&] { task = [&] { return read_book(options, say_headroom); }; });

    auto* volumes = add_command(program, options, "volumes", "what was released, by claim, month, …");
    add_read_options(*volumes, options);
    auto by = std::make_shared<std::vector<std::string>>();
    volumes->add_option("--by", *by, "claim,month,ground,cell,material,barge")->delimiter(',');
    volumes->callback([&options, &task, by] {
        const auto groups = groups_from(*by);
        task = [&options, groups] {
            return read_book(options, [&](const Reading& reading) { return say_volumes(reading, *groups); });
        };
    });

    auto* load = add_command(program, options, "load", "how much is in a load, by every method");
    add_read_options(*load, options);
    auto label = std::make_shared<std::string>();
    load->add_option("load", *label, "the load's number")->required();
    load->callback([&options, &task, label] {
        task = [&options, label] {
            return read_book(
                options, [&](const Reading& reading) { return say_load(reading, *label); }, AsAt::rows);
        };
    });

    auto* releases =
        add_command(program, options, "releases", "where every release was, held against its ground");
    add_read_options(*releases, options);
    releases->callback([&] {
        task = [&] {
            return read_book(options, [&](const Reading& reading) { return say_releases(reading, options); });
        };
    });
}

}  // namespace spoilbook
