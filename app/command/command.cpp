// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/command.h"

#include <fmt/format.h>

#include <cstdio>

#include "app/machine/machine.h"
#include "model/book/journal.h"
#include "model/book/replay.h"
#include "model/book/season.h"
#include "model/folder/utf8.h"
#include "model/record/field_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

CLI::App* add_command(CLI::App& program, Options& options, const std::string& name,
                      const std::string& summary) {
    auto* command = program.add_subcommand(name, summary);
    command->add_option("book", options.book, "the book, a file that ends in .sbook")->required();
    command->add_flag("--json", options.json, "print one JSON object on standard output");
    return command;
}

void add_read_options(CLI::App& command, Options& options) {
    command.add_option("--as-at", options.as_at,
                       "only what had happened by then counts (ISO 8601); default now");
    command.add_option("--known-at", options.known_at,
                       "only what had been entered by then: a time or an entry");
    command.add_option("--clock", options.clock, "take this as now (for replays)");
}

void add_write_options(CLI::App& command, Options& options) {
    command.add_option("--by", options.by, "who does it");
    command.add_option("--why", options.why, "the reason; needed to correct something signed");
    command.add_option("--clock", options.clock, "take this as now (for replays)");
    command.add_option("--device", options.device, "write under this machine's name (for replays)");
}

int say(const Options& options, const Said& said) {
    if (options.json)
        fmt::print("{}\n", said.json.dump(2));
    else
        fmt::print("{}", said.text);
    return said.exit;
}

int refuse(const Options& options, const Refusals& refusals) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const auto& refusal : refusals) {
        fmt::print(stderr, "{}\n", one_line(refusal));
        list.push_back({{"code", refusal.code},
                        {"where", refusal.where},
                        {"what", refusal.what},
                        {"mend", refusal.mend}});
    }
    if (options.json) fmt::print("{}\n", nlohmann::ordered_json{{"refusals", list}}.dump(2));
    return refused;
}

void print_notes(const Notes& notes) {
    for (const auto& note : notes)
        fmt::print(stderr, "note: {}\n", one_line(note));
}

Instant clock_of(const Options& options) {
    if (options.clock.empty()) return now();
    const auto at = parse_instant(options.clock, Zone::utc());
    if (!at) throw CLI::ValidationError("--clock", one_line(at.refusals().front()));
    return *at;
}

std::string device_of(const Options& options) {
    return options.device.empty() ? device_name() : options.device;
}

namespace {

/// What a person gives for a name or a reason: blanks at the ends are none of it, so that a reason of blanks
/// is no reason.
std::string words_of(const std::string& option, const std::string& text) {
    if (const auto bad = why_not_text(text, "")) throw CLI::ValidationError(option, bad->what);
    return std::string(trimmed(text));
}

}  // namespace

Act act_of(const Options& options, EntryKind kind) {
    return {kind, clock_of(options), words_of("--by", options.by), words_of("--why", options.why)};
}

Checked<Instant> time_given(const std::string& option, const std::string& text, const Zone& zone) {
    auto at = parse_instant_or_day(text, zone);
    if (!at && at.refusals().front().code.rfind("not-a-", 0) == 0)
        throw CLI::ValidationError(option, one_line(at.refusals().front()));
    return at;
}

namespace {

Checked<Reading> reading_of(const Options& options) {
    auto opened = Book::open_to_read(options.book);
    if (!opened) return opened.refusals();
    Reading reading;
    reading.book.emplace(std::move(*opened));
    reading.head = journal_state(*reading.book).head;
    reading.import_stamps_ms = import_stamps_ms(*reading.book);
    if (!options.known_at.empty()) {
        const auto point = parse_known_at(*reading.book, options.known_at);
        if (!point) return point.refusals();
        reading.head = head_at(*reading.book, *point);
        reading.book.emplace(known_at(*reading.book, *point));
    }
    reading.season = read_season(*reading.book);
    reading.as_at = clock_of(options);
    if (options.as_at.empty()) return reading;
    const auto as_at = time_given("--as-at", options.as_at, reading.season.zone);
    if (!as_at) return as_at.refusals();
    reading.as_at = *as_at;
    return reading;
}

}  // namespace

int read_book(const Options& options, const std::function<Checked<Said>(const Reading&)>& answer) {
    auto reading = reading_of(options);
    if (!reading) return refuse(options, reading.refusals());
    reading->ledger = std::make_unique<Ledger>(reading->season);
    const auto said = answer(*reading);
    return said ? say(options, *said) : refuse(options, said.refusals());
}

int write_book(const Options& options, const std::function<Checked<Said>(Book&)>& deed) {
    auto book = Book::open_to_write(options.book, device_of(options), act_of(options));
    if (!book) return refuse(options, book.refusals());
    const auto said = deed(*book);
    return said ? say(options, *said) : refuse(options, said.refusals());
}

nlohmann::ordered_json number_or_null(const std::optional<double>& value) {
    return value ? nlohmann::ordered_json(*value) : nlohmann::ordered_json(nullptr);
}

nlohmann::ordered_json instant_or_null(const std::optional<Instant>& at, const Zone& zone) {
    return at ? nlohmann::ordered_json(instant_text(*at, zone)) : nlohmann::ordered_json(nullptr);
}

void put_estimate(nlohmann::ordered_json& object, const std::string& name,
                  const std::optional<Estimate>& estimate) {
    object[name] = estimate ? nlohmann::ordered_json(estimate->value) : nlohmann::ordered_json(nullptr);
    object[name + "_u"] = estimate ? nlohmann::ordered_json(estimate->u()) : nlohmann::ordered_json(nullptr);
}

}  // namespace spoilbook
