// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/command.h"

#include <fmt/format.h>

#include <cstdio>

#include "app/machine/machine.h"
#include "model/book/happened.h"
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

namespace {

/// The object with its long list, an element a line.
void print_with_list(const Said& said) {
    std::string head = said.json.dump(2);
    head.erase(head.find_last_not_of("\n }") + 1);
    fmt::print("{}{}\n  \"{}\": [", head, said.json.empty() ? "" : ",", said.list_name);
    bool first = true;
    said.list([&](const nlohmann::ordered_json& element) {
        fmt::print("{}\n    {}", first ? "" : ",", element.dump());
        first = false;
    });
    fmt::print("{}]\n}}\n", first ? "" : "\n  ");
}

}  // namespace

int say(const Options& options, const Said& said) {
    if (options.json && said.list)
        print_with_list(said);
    else if (options.json)
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

Checked<Instant> as_at_given(const Options& options, const Zone& zone) {
    if (options.as_at.empty()) return clock_of(options);
    return time_given("--as-at", options.as_at, zone);
}

Checked<Reading> reading_of(const Options& options, AsAt as_at) {
    auto opened = Book::open_to_read(options.book);
    if (!opened) return opened.refusals();
    Reading reading;
    reading.book.emplace(std::move(*opened));
    const Book& book = *reading.book;
    const auto known = known_at_given(options, book);
    if (!known) return known.refusals();
    reading.head = *known ? journal_state_at(book, **known).head : journal_state(book).head;
    reading.import_stamps_ms = import_stamps_ms(book);
    const auto instant = as_at_given(options, book_zone(book));
    if (!instant) return instant.refusals();
    reading.as_at = *instant;
    auto then = book_then(options, book, as_at);
    if (!then) return then.refusals();
    if (*then) reading.book = std::move(*then);
    reading.season = read_season(*reading.book);
    return reading;
}

}  // namespace

Checked<std::optional<KnownAt>> known_at_given(const Options& options, const Book& book) {
    if (options.known_at.empty()) return std::optional<KnownAt>();
    const auto point = parse_known_at(book, options.known_at);
    if (!point) return point.refusals();
    return std::optional(*point);
}

Checked<std::optional<Book>> book_then(const Options& options, const Book& book, AsAt as_at) {
    const auto known = known_at_given(options, book);
    if (!known) return known.refusals();
    std::optional<Book> copy;
    if (as_at == AsAt::rows && !options.as_at.empty()) {
        const auto instant = as_at_given(options, book_zone(book));
        if (!instant) return instant.refusals();
        copy.emplace(happened_by(book, *instant, *known));
    } else if (*known) {
        copy.emplace(known_at(book, **known));
    }
    return copy;
}

int read_book(const Options& options, const std::function<Checked<Said>(const Reading&)>& answer,
              AsAt as_at) {
    auto reading = reading_of(options, as_at);
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

void put_estimate(nlohmann::ordered_json& object, const std::string& name,
                  const std::optional<Estimate>& estimate) {
    object[name] = estimate ? nlohmann::ordered_json(estimate->value) : nlohmann::ordered_json(nullptr);
    object[name + "_u"] = estimate ? nlohmann::ordered_json(estimate->u()) : nlohmann::ordered_json(nullptr);
}

void put_measured(nlohmann::ordered_json& object, const std::string& name,
                  const std::optional<Measured>& measured) {
    object[name] = measured ? nlohmann::ordered_json(measured->value) : nlohmann::ordered_json(nullptr);
    object[name + "_u"] = measured ? nlohmann::ordered_json(measured->u) : nlohmann::ordered_json(nullptr);
}

}  // namespace spoilbook
