// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/solids.h"

#include <fmt/format.h>

#include "model/answer/solids.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

struct Given {
    std::string site;
    std::optional<double> at;
    double probability = 0.9;
};

Json estimate_json(const SolidsRegression& line, double turbidity, double probability) {
    const auto found = solids_at(line, turbidity, probability);
    return {{"turbidity", turbidity},     {"solids_mg_l", found.solids_mg_l},
            {"low_mg_l", found.low},      {"high_mg_l", found.high},
            {"probability", probability}, {"extrapolated", found.extrapolated}};
}

Json point_json(const SolidsPoint& point, const SolidsRegression* line, const Zone& zone) {
    const auto& sample = point.sample;
    Json row{{"time", instant_or_null(sample.time, zone)},
             {"turbidity", number_or_null(sample.turbidity)},
             {"solids_mg_l", number_or_null(sample.solids_mg_l)},
             {"lab", sample.lab.empty() ? Json(nullptr) : Json(sample.lab)},
             {"left_out", point.left_out.empty() ? Json(nullptr) : Json(point.left_out)}};
    const bool on_line = line != nullptr && point.left_out.empty();
    row["fitted_mg_l"] = on_line ? Json(solids_at(*line, *sample.turbidity).solids_mg_l) : Json(nullptr);
    return row;
}

std::string text_of(const SiteSolids& solids, const Json& json) {
    const SolidsRegression& line = *solids.line;
    std::string text = fmt::format(
        "{}: log10 S = {:.4f} + {:.4f} log10 T, n {}, R² {:.3f}, standard error {:.4f} log10 units, "
        "smearing {:.4f}, of {} to {} {}\n",
        solids.site, line.intercept, line.slope, line.n, line.r2, line.standard_error, line.smearing,
        number_text(line.least), number_text(line.greatest), solids.unit);
    const auto& at = json["at"];
    if (!at.is_null())
        text +=
            fmt::format("at {}: {:.3g} mg/L, a new sample within {:.3g} to {:.3g} mg/L with {:.0f} %{}\n",
                        at["turbidity"].dump(), at["solids_mg_l"].get<double>(), at["low_mg_l"].get<double>(),
                        at["high_mg_l"].get<double>(), 100 * at["probability"].get<double>(),
                        at["extrapolated"].get<bool>() ? ", outside the samples" : "");
    return text;
}

Checked<Said> answer(const Reading& reading, const Given& given) {
    if (given.at && !(*given.at > 0)) throw CLI::ValidationError("--at", "must be over 0");
    const auto solids = site_solids(*reading.book, given.site, reading.as_at);
    if (!solids) return solids.refusals();
    const SolidsRegression* line = solids->line ? &*solids->line : nullptr;
    const auto number = [&](double SolidsRegression::*of) {
        return line == nullptr ? Json(nullptr) : Json(line->*of);
    };
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, reading.season.zone);
    said.json["site"] = solids->site;
    said.json["unit"] = solids->unit.empty() ? Json(nullptr) : Json(solids->unit);
    said.json["n"] = solids->used();
    said.json["r2"] = number(&SolidsRegression::r2);
    said.json["slope"] = number(&SolidsRegression::slope);
    said.json["intercept"] = number(&SolidsRegression::intercept);
    said.json["standard_error"] = number(&SolidsRegression::standard_error);
    said.json["smearing"] = number(&SolidsRegression::smearing);
    said.json["turbidity_least"] = number(&SolidsRegression::least);
    said.json["turbidity_greatest"] = number(&SolidsRegression::greatest);
    said.json["why"] = line != nullptr ? Json(nullptr) : Json(solids->why);
    said.json["at"] =
        line != nullptr && given.at ? estimate_json(*line, *given.at, given.probability) : Json(nullptr);
    said.json["points"] = Json::array();
    for (const auto& point : solids->points)
        said.json["points"].push_back(point_json(point, line, reading.season.zone));
    said.text = line == nullptr ? fmt::format("{}: no line: {}\n", solids->site, solids->why)
                                : text_of(*solids, said.json);
    return said;
}

}  // namespace

void add_solids_command(CLI::App& program, Options& options, Task& task) {
    auto given = std::make_shared<Given>();
    auto* command =
        add_command(program, options, "solids", "suspended solids from turbidity, by a site's samples");
    add_read_options(*command, options);
    command->add_option("--site", given->site, "the site")->required();
    command->add_option("--at", given->at, "a turbidity, in the site's unit");
    command->add_option("--probability", given->probability, "with which a new sample lies in the interval")
        ->check(CLI::Range(0.01, 0.999));
    command->callback([&options, &task, given] {
        task = [&options, given] {
            return read_book(options, [&](const Reading& reading) { return answer(reading, *given); });
        };
    });
}

}  // namespace spoilbook
