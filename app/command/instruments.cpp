// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/instruments.h"

#include <fmt/format.h>

#include "model/answer/instrument_stands.h"
#include "model/answer/json_values.h"
#include "model/answer/threshold_versions.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Checked<Said> say_instruments(const Reading& reading) {
    const Zone& zone = reading.season.zone;
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, zone);
    said.json["instruments"] = Json::array();
    for (const auto& stand : instrument_stands(*reading.book, reading.as_at)) {
        const auto& row = stand.row;
        said.json["instruments"].push_back({{"site", stand.site},
                                            {"serial", row.serial},
                                            {"id", row.instrument},
                                            {"standing", stand.standing},
                                            {"calibration", text(stand.calibration)},
                                            {"deployed", instant_or_null(row.deployed, zone)},
                                            {"recovered", instant_or_null(row.recovered, zone)},
                                            {"calibrated", instant_or_null(row.calibrated, zone)},
                                            {"calibrated_until", instant_or_null(row.calibrated_until, zone)},
                                            {"by", row.by},
                                            {"remarks", row.remarks}});
        said.text +=
            fmt::format("{} {}: {}, calibration {}{}\n", stand.site, row.serial,
                        stand.standing ? "stands"
                        : row.deployed ? "stood"
                                       : "not deployed",
                        in_words(text(stand.calibration)),
                        row.calibrated_until ? ", until " + instant_text(*row.calibrated_until, zone) : "");
    }
    if (said.text.empty()) said.text = "no instruments\n";
    return said;
}

Json version_json(const ThresholdVersion& version, const Zone& zone) {
    const ThresholdSpan open;
    const auto& set = version.span.thresholds;
    const Instant from = version.span.from, to = version.span.to;
    return {{"site", version.site},
            {"unit", version.unit},
            {"check", text_or_null(version.check)},
            {"from", from == open.from ? Json(nullptr) : Json(instant_text(from, zone))},
            {"to", to == open.to ? Json(nullptr) : Json(instant_text(to, zone))},
            {"in_force", version.in_force},
            {"range_low", number_or_null(set.range_low)},
            {"range_high", number_or_null(set.range_high)},
            {"suspect_low", number_or_null(set.suspect_low)},
            {"suspect_high", number_or_null(set.suspect_high)},
            {"spike", number_or_null(set.spike)},
            {"spike_fail", number_or_null(set.spike_fail)},
            {"rate_per_min", number_or_null(set.rate_per_min)},
            {"flat_min", number_or_null(set.flat_min)},
            {"flat_fail_min", number_or_null(set.flat_fail_min)},
            {"flat_tolerance", number_or_null(set.flat_tolerance)}};
}

Checked<Said> say_thresholds(const Reading& reading) {
    const Zone& zone = reading.season.zone;
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, zone);
    said.json["versions"] = Json::array();
    for (const auto& version : threshold_versions(*reading.book, reading.as_at)) {
        const Json row = version_json(version, zone);
        said.json["versions"].push_back(row);
        said.text += fmt::format("{}{}{}:", version.site, version.check.empty() ? "" : " " + version.check,
                                 version.in_force ? ", in force" : "");
        for (const auto& [name, value] : row.items()) {
            const bool said_already = name == "site" || name == "check" || name == "in_force";
            if (!said_already && !value.is_null())
                said.text +=
                    fmt::format(" {} {}", name, value.is_string() ? value.get<std::string>() : value.dump());
        }
        said.text += "\n";
    }
    if (said.text.empty()) said.text = "no sites\n";
    return said;
}

void add(CLI::App& program, Options& options, Task& task, const char* name, const char* summary,
         Checked<Said> (*say)(const Reading&)) {
    auto* command = add_command(program, options, name, summary);
    add_read_options(*command, options);
    command->callback([&options, &task, say] {
        task = [&options, say] {
            return read_book(options, [say](const Reading& reading) { return say(reading); });
        };
    });
}

}  // namespace

void add_instrument_commands(CLI::App& program, Options& options, Task& task) {
    add(program, options, task, "instruments", "which logger stands where, and whether its calibration holds",
        say_instruments);
    add(program, options, task, "thresholds", "every version of the thresholds of the sites' checks",
        say_thresholds);
}

}  // namespace spoilbook
