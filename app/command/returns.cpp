// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "app/command/command.h"
#include "app/command/tracks.h"
#include "forms/print/print_session.h"
#include "forms/print/write_return.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Json totals_json(const ReturnFacts& facts) {
    Json totals;
    totals["releases"] = facts.schedule.size();
    totals["loads"] = facts.totals.loads;
    totals["trips"] = facts.totals.trips;
    put_estimate(totals, "hopper_m3", facts.totals.amounts.hopper_m3);
    put_estimate(totals, "in_situ_m3", facts.totals.amounts.in_situ_m3);
    put_estimate(totals, "wet_t", facts.totals.amounts.wet_t);
    put_estimate(totals, "dry_t", facts.totals.amounts.dry_t);
    totals["printed"] = {{"hopper_m3", facts.printed.hopper_m3.value()},
                         {"in_situ_m3", facts.printed.in_situ_m3.value()}};
    return totals;
}

Said say_return(const ReturnFacts& facts, const std::string& folder) {
    Said said;
    said.json["period"] = facts.period_name;
    said.json["as_at"] = instant_text(facts.as_at, facts.season->zone);
    said.json["head"] = facts.journal_head;
    said.json["missing"] = Json::array();
    for (const auto& missing : facts.missing) {
        said.json["missing"].push_back({{"what", missing.what}, {"where", missing.where}});
        said.text += fmt::format("missing: {}: {}\n", missing.where, missing.what);
    }
    said.json["totals"] = totals_json(facts);
    said.json["reasons"] = facts.reasons;
    said.json["triggers"] = Json::array();
    for (const auto& answer : facts.triggers)
        said.json["triggers"].push_back(
            {{"condition", answer.record.of->number},
             {"site", answer.record.event.site},
             {"passed", instant_text(answer.record.event.start, facts.season->zone)},
             {"answer", text(answer.state)}});
    said.json["sealed"] = false;
    said.json["files"] = Json::array();
    if (!facts.missing.empty()) {
        said.text += fmt::format("{} missing: no return was made\n", facts.missing.size());
        said.exit = refused;
        return said;
    }
    for (const auto& reason : facts.reasons)
        said.text += "stands against compliance: " + reason + "\n";
    said.text +=
        fmt::format("return for {}: {} releases, {:.1f} m³ in situ, {:.1f} m³ hopper", facts.period_name,
                    facts.schedule.size(), facts.printed.in_situ_m3.value(), facts.printed.hopper_m3.value());
    said.text += folder.empty() ? "; nothing is missing\n" : "; written to " + folder + "\n";
    return said;
}

Checked<Said> make_return(const Reading& reading, const Options& options, const std::string& period,
                          const std::string& folder) {
    auto tracks = tracks_of(reading, options);
    const auto facts =
        gather_return(*reading.book, *reading.ledger,
                      {period, reading.as_at, reading.head, options.by, reading.import_stamps_ms, &tracks});
    if (!facts) return facts.refusals();
    Said said = say_return(*facts, folder);
    if (said.exit != answered || folder.empty()) return said;
    const print::PrintSession session;
    if (auto written = print::write_return(*facts, folder); !written) return written.refusals();
    said.json["files"] = {"SHA256SUMS", "return.json", "return.pdf", "trips.csv"};
    return said;
}

}  // namespace

void add_return_commands(CLI::App& program, Options& options, Task& task) {
    auto* command = add_command(program, options, "return", "make a month's return, or list what is missing");
    add_read_options(*command, options);
    auto period = std::make_shared<std::string>();
    auto folder = std::make_shared<std::string>();
    command->add_option("--period", *period, "the month: 2025-11")->required();
    command->add_option("--out", *folder, "a folder that is new or empty; without it nothing is written");
    command->add_option("--by", options.by, "who makes it");
    command->callback([&options, &task, period, folder] {
        task = [&options, period, folder] {
            return read_book(options, [&](const Reading& reading) {
                return make_return(reading, options, *period, *folder);
            });
        };
    });
}

}  // namespace spoilbook
