// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/over_dredge.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "model/progress/over_dredge.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Json row_json(const OverDredge& dug, std::optional<double> unit_cost) {
    Json row = Json::object();
    if (dug.claim != nullptr) row["claim"] = dug.claim->claim;
    put_measured(row, "within_allowance_m3", dug.within);
    put_measured(row, "beyond_allowance_m3", dug.beyond);
    put_measured(row, "below_target_m3", dug.below_target());
    row["removed_m3"] = number_or_null(dug.removed_m3);
    row["share_of_removed"] = number_or_null(dug.share());
    put_measured(row, "cost", dug.cost(unit_cost));
    row["removed"] = dug.reports;
    row["assumed"] = dug.assumed;
    return row;
}

std::string amount_text(const std::optional<Measured>& measured) {
    return measured ? with_u(measured->value, measured->u, 0) + " m³" : "not reported";
}

std::string row_text(const OverDredge& dug, std::optional<double> unit_cost) {
    std::string text = fmt::format("{}: within the allowance {}, beyond it {}",
                                   dug.claim == nullptr ? "all" : "claim " + dug.claim->claim,
                                   amount_text(dug.within), amount_text(dug.beyond));
    if (const auto share = dug.share())
        text += fmt::format(", {:.1f} % of the {:.0f} m³ removed", 100 * *share, *dug.removed_m3);
    if (const auto paid = dug.cost(unit_cost)) text += ", cost " + with_u(paid->value, paid->u, 0);
    text += fmt::format(" ({})\n", fmt::join(dug.reports, ", "));
    for (const auto& taken : dug.assumed)
        text += fmt::format("    {}\n", taken);
    return text;
}

Checked<Said> say_over_dredge(const Reading& reading, std::optional<double> unit_cost) {
    const auto made = over_dredge(reading.season, reading.as_at);
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["unit_cost"] = number_or_null(unit_cost);
    said.json["claims"] = Json::array();
    for (const auto& claim : made.claims) {
        said.json["claims"].push_back(row_json(claim, unit_cost));
        said.text += row_text(claim, unit_cost);
    }
    said.json["all"] = row_json(made.all, unit_cost);
    said.json["left_out"] = made.left_out;
    if (made.claims.empty())
        said.text =
            "No surveyor's report tells of over-dredge: give within_allowance_m3 and beyond_allowance_m3 of "
            "what was removed (sbk log BOOK removed …).\n";
    else
        said.text += row_text(made.all, unit_cost);
    for (const auto& report : made.left_out)
        said.text += fmt::format("{} is left out: shorter reports of the claim cover its time\n", report);
    return said;
}

}  // namespace

void add_over_dredge_command(CLI::App& program, Options& options, Task& task) {
    auto unit_cost = std::make_shared<std::optional<double>>();
    auto* command =
        add_command(program, options, "over-dredge", "what was dug below target level, and what it cost");
    add_read_options(*command, options);
    command->add_option("--unit-cost", *unit_cost, "money for a cubic metre in situ, never in a return")
        ->check(CLI::NonNegativeNumber);
    command->callback([&options, &task, unit_cost] {
        task = [&options, unit_cost] {
            return read_book(options,
                             [&](const Reading& reading) { return say_over_dredge(reading, *unit_cost); });
        };
    });
}

}  // namespace spoilbook
