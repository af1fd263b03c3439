// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <fstream>
#include <iterator>

#include "app/command/command.h"
#include "app/command/tracks.h"
#include "model/answer/try_condition.h"
#include "model/consent/sentence.h"
#include "model/folder/condition_reader.h"
#include "model/folder/nearest.h"
#include "model/logging/write_condition.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

/// Longer lists are cut in what people read; the JSON has all.
constexpr std::size_t most_lines = 20;

struct TryOptions {
    std::string file, consent, from, to;
};

Checked<std::string> bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(file), {}};
    if (file.is_open()) return bytes;
    return Refusal{"unreadable", path, "the file cannot be read",
                   "name a file that holds one condition as JSON"};
}

/// The consent of that number; without one, the only one of the book.
Checked<Id> consent_named(const Season& season, const std::string& number) {
    const auto& consents = season.consents.rows();
    if (number.empty() && consents.size() == 1) return consents.front().id;
    for (const auto& consent : consents) {
        if (consent.consent == number) return consent.id;
    }
    if (number.empty())
        return Refusal{"unknown-reference", "--consent",
                       fmt::format("the book has {} consents", consents.size()),
                       "say which one the condition is of"};
    return Refusal{"unknown-reference", "--consent", "the book has no consent " + number,
                   labels_there_are(number, labels_of(consents, &Consent::consent))};
}

Json pass_json(const TrialPass& pass, const Zone& zone) {
    const auto text = [](const std::string& words) { return words.empty() ? Json(nullptr) : Json(words); };
    return {{"at", instant_text(pass.at, zone)},
            {"what", text(pass.what)},
            {"load", text(pass.load)},
            {"member", text(pass.member)},
            {"value", number_or_null(pass.value)},
            {"level", number_or_null(pass.level)},
            {"why", text(pass.why)}};
}

std::string trial_text(const Trial& trial, const Zone& zone) {
    if (!trial.why_not.empty()) return "cannot be tried: " + trial.why_not + "\n";
    std::string text =
        fmt::format("{} {} {}, held against {} {}", trial.floor ? "missed" : "passed", trial.times,
                    trial.times == 1 ? "time" : "times", trial.looked_at, trial.of);
    if (trial.cannot_tell > 0) text += fmt::format(", of them {} that cannot be told", trial.cannot_tell);
    text += "\n";
    if (!trial.untold.empty()) text += "  cannot be told of " + trial.untold + "\n";
    for (std::size_t i = 0; i < trial.passes.size() && i < most_lines; ++i) {
        const auto& pass = trial.passes[i];
        text += fmt::format("  {}  {}{}  {}\n", instant_text(pass.at, zone), pass.what,
                            pass.member.empty() ? "" : " (" + pass.member + ")", pass.why);
    }
    if (trial.passes.size() > most_lines)
        text += fmt::format("  and {} more: --json has all\n", trial.passes.size() - most_lines);
    return text;
}

Checked<Said> say_trial(const Reading& reading, const Options& options, const TryOptions& asked) {
    const Zone& zone = reading.season.zone;
    const auto bytes = bytes_of(asked.file);
    if (!bytes) return bytes.refusals();
    auto condition = condition_from_text(std::string_view(*bytes), asked.file, zone);
    if (!condition) return condition.refusals();
    const auto consent = consent_named(reading.season, asked.consent);
    if (!consent) return consent.refusals();
    condition->consent = *consent;
    if (auto refusals = unknown_names(*reading.book, *condition, asked.file); !refusals.empty())
        return refusals;
    const auto to = asked.to.empty() ? Checked<Instant>(reading.as_at) : time_given("--to", asked.to, zone);
    if (!to) return to.refusals();
    // A season: the year before.
    const auto from = asked.from.empty() ? Checked<Instant>(shift_months(zone, *to, -12))
                                         : time_given("--from", asked.from, zone);
    if (!from) return from.refusals();
    auto tracks = tracks_of(reading, options);
    const auto trial = try_condition(*reading.ledger, *condition, *from, *to, {&tracks, &*reading.book});
    Said said;
    said.json["sentence"] = condition_sentence(*condition);
    said.json["from"] = instant_text(*from, zone);
    said.json["to"] = instant_text(*to, zone);
    said.json["why_not"] = trial.why_not.empty() ? Json(nullptr) : Json(trial.why_not);
    said.json["of"] = trial.of.empty() ? Json(nullptr) : Json(trial.of);
    said.json["looked_at"] = trial.looked_at;
    said.json["cannot_tell"] = trial.cannot_tell;
    said.json["untold"] = trial.untold.empty() ? Json(nullptr) : Json(trial.untold);
    said.json["times"] = trial.why_not.empty() ? Json(trial.times) : Json(nullptr);
    said.json["first"] = instant_or_null(trial.first(), zone);
    said.json["passes"] = Json::array();
    for (const auto& pass : trial.passes)
        said.json["passes"].push_back(pass_json(pass, zone));
    said.text = condition_sentence(*condition) + "\n" + trial_text(trial, zone);
    return said;
}

}  // namespace

void add_try_command(CLI::App& program, Options& options, Task& task) {
    auto asked = std::make_shared<TryOptions>();
    auto* command =
        add_command(program, options, "try", "how a condition would have done over a time that has passed");
    add_read_options(*command, options);
    command->add_option("--condition", asked->file, "a file with one condition, as in consents.json")
        ->required();
    command->add_option("--consent", asked->consent,
                        "the number of its consent; not needed where the book has one");
    command->add_option("--from", asked->from, "from then on; left out: 12 months before --to");
    command->add_option("--to", asked->to, "until then; left out: the as-at");
    command->callback([&options, &task, asked] {
        task = [&options, asked] {
            return read_book(options,
                             [&](const Reading& reading) { return say_trial(reading, options, *asked); });
        };
    });
}

}  // namespace spoilbook
