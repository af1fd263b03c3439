// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "model/answer/json_values.h"
#include "model/book/book.h"
#include "model/book/replay.h"
#include "model/consent/ledger.h"
#include "model/volume/reconcile_period.h"

namespace spoilbook {

/// Exit status: 0 answered or done, whatever the answer; 1 refused or not intact; 2 wrong usage.
enum Exit { answered = 0, refused = 1, wrong_usage = 2 };

/// What every command takes.
struct Options {
    bool json = false;
    std::string book;
    std::string as_at, known_at;  ///< of reads
    std::string by, why;          ///< of writes
    std::string clock, device;    ///< of replays: instead of the machine's clock and name
};

/// What a command has to say: JSON for --json, lines for people.
struct Said {
    nlohmann::ordered_json json = nlohmann::ordered_json::object();
    std::string text;
    int exit = answered;
    /// One more member of the JSON, a list too long to be held: calls the hand with each element.
    std::string list_name;
    std::function<void(const std::function<void(const nlohmann::ordered_json&)>&)> list;
};

/// The task of the command that was given; run after all options are read.
using Task = std::function<int()>;

/// Adds a command; options shared by all are there already.
CLI::App* add_command(CLI::App& program, Options& options, const std::string& name,
                      const std::string& summary);
void add_read_options(CLI::App& command, Options& options);
void add_write_options(CLI::App& command, Options& options);

// One file a family. Each sets `task` when its command was given.
void add_book_commands(CLI::App& program, Options& options, Task& task);
void add_figure_commands(CLI::App& program, Options& options, Task& task);
void add_compare_commands(CLI::App& program, Options& options, Task& task);
void add_track_command(CLI::App& program, Options& options, Task& task);
void add_check_command(CLI::App& program, Options& options, Task& task);
void add_duties_command(CLI::App& program, Options& options, Task& task);
void add_try_command(CLI::App& program, Options& options, Task& task);
void add_conditions_command(CLI::App& program, Options& options, Task& task);
void add_write_commands(CLI::App& program, Options& options, Task& task);
void add_journal_commands(CLI::App& program, Options& options, Task& task);
void add_return_commands(CLI::App& program, Options& options, Task& task);
void add_burndown_command(CLI::App& program, Options& options, Task& task);
void add_turbidity_commands(CLI::App& program, Options& options, Task& task);
void add_readings_command(CLI::App& program, Options& options, Task& task);

/// Prints and gives the exit status.
int say(const Options& options, const Said& said);
/// All reasons, one a line on standard error; with --json also as {"refusals": […]} on standard output.
int refuse(const Options& options, const Refusals& refusals);
void print_notes(const Notes& notes);

Instant clock_of(const Options& options);
std::string device_of(const Options& options);
Act act_of(const Options& options, EntryKind kind = EntryKind::change);

/// A time, or a day for its midnight, as an option gives it. What is no time is wrong usage; what the zone
/// makes ambiguous, or skips, is refused.
Checked<Instant> time_given(const std::string& option, const std::string& text, const Zone& zone);

/// What a read reads: the season as known at --known-at, and the instant of --as-at.
struct Reading {
    std::optional<Book> book;
    Season season;
    std::unique_ptr<Ledger> ledger;
    Instant as_at;
    std::set<std::int64_t> import_stamps_ms;
    std::string head;  ///< of the journal, at --known-at where it is given
};

/// How --as-at is heeded: figures are worked out from all rows at that instant; for what shows rows, those
/// that had not begun are left out before (happened_by).
enum class AsAt { figures, rows };

/// Opens for reading; `answer` makes what is said. Refusals are printed.
int read_book(const Options& options, const std::function<Checked<Said>(const Reading&)>& answer,
              AsAt as_at = AsAt::figures);
/// The point of --known-at; nothing where it is not given.
Checked<std::optional<KnownAt>> known_at_given(const Options& options, const Book& book);
/// A copy of the book as it was at --known-at and, for what shows rows, at --as-at; nothing where neither is
/// given: then it is `book` itself.
Checked<std::optional<Book>> book_then(const Options& options, const Book& book, AsAt as_at);
/// Opens for writing.
int write_book(const Options& options, const std::function<Checked<Said>(Book&)>& deed);

/// An estimate's value and _u under `name`, or nulls.
void put_estimate(nlohmann::ordered_json& object, const std::string& name,
                  const std::optional<Estimate>& estimate);
/// The same of a value of which only its uncertainty is known.
void put_measured(nlohmann::ordered_json& object, const std::string& name,
                  const std::optional<Measured>& measured);

}  // namespace spoilbook
