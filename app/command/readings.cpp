// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <filesystem>

#include "app/command/command.h"
#include "app/machine/machine.h"
#include "model/book/season.h"
#include "model/folder/regular_file.h"
#include "model/logging/watched_folder.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

struct Given {
    std::string file, poll, site, dates, decimal;
    int still_s = 60;
    LoggerAnswers answers;
    bool only_try = false;
};

LoggerAnswers answers_from(const Given& given) {
    LoggerAnswers answers = given.answers;
    if (!given.dates.empty()) {
        answers.dates = date_order_named(given.dates);
        if (!answers.dates)
            throw CLI::ValidationError(
                "--dates", "\"" + given.dates + "\" is not ymd, dmy, mdy, unix, unix_ms, excel or doy");
    }
    if (!given.decimal.empty()) {
        if (given.decimal != "." && given.decimal != ",")
            throw CLI::ValidationError("--decimal", "\"" + given.decimal + "\" is not . or ,");
        answers.decimal = given.decimal.front();
    }
    return answers;
}

Json questions_json(const std::vector<LoggerQuestion>& questions) {
    Json rows = Json::array();
    for (const auto& question : questions)
        rows.push_back({{"about", question.about}, {"text", question.text}, {"choices", question.choices}});
    return rows;
}

Json notes_json(const Notes& notes) {
    print_notes(notes);
    Json rows = Json::array();
    for (const auto& note : notes)
        rows.push_back({{"where", note.where}, {"what", note.what}});
    return rows;
}

Said say_look(const ReadingsLook& look, const std::string& site, const std::string& file, const Zone& zone) {
    const auto& rows = look.rows;
    Said said;
    said.json["site"] = site;
    said.json["assumed"] = look.guess.assumed;
    said.json["questions"] = questions_json(look.guess.questions);
    said.json["layout"] = Json::parse(layout_text(look.guess.layout));
    for (const auto& assumed : look.guess.assumed)
        said.text += "assumed: " + assumed + "\n";
    for (const auto& question : look.guess.questions)
        said.text += question.about == "table"
                         ? fmt::format("to be mended in a copy: {}\n", question.text)
                         : fmt::format("to be said with --{}: {}\n", question.about, question.text);
    said.json["file_rows"] = look.guess.table.first_rows;
    if (!look.guess.questions.empty()) return said;
    said.json["first_readings"] = Json::array();
    for (const auto& reading : rows.first) {
        said.json["first_readings"].push_back(
            {{"time", instant_text(reading.time, zone)}, {"value", number_or_null(reading.value)}});
        said.text += fmt::format("{}  {}\n", instant_text(reading.time, zone),
                                 reading.value ? fmt::format("{}", *reading.value) : "missing");
    }
    const std::vector<std::pair<const char*, std::size_t>> counts{
        {"readings", rows.readings},       {"present", rows.readings - rows.missing},
        {"missing", rows.missing},         {"out_of_order", rows.backwards},
        {"said_twice", rows.twice},        {"two_values_at_a_time", rows.otherwise},
        {"lines_left_out", rows.left_out}, {"refused", rows.refused}};
    for (const auto& [name, n] : counts)
        said.json[name] = n;
    said.json["notes"] = notes_json(notes_of(rows, file, zone));
    said.text += fmt::format(
        "{} readings, {} without a value, {} out of order, {} twice, {} at a time that had "
        "another value, {} lines left out, {} refused\n",
        rows.readings, rows.missing, rows.backwards, rows.twice, rows.otherwise, rows.left_out, rows.refused);
    return said;
}

Checked<Said> try_file(const Reading& reading, const Given& given, const std::string& name,
                       const ByteSource& bytes) {
    const auto look =
        look_at_readings(*reading.book, given.site, name, bytes, answers_from(given), reading.as_at);
    if (!look) return look.refusals();
    for (const auto& refusal : look->rows.refusals)
        print_notes({{refusal.where, refusal.what}});
    return say_look(*look, given.site, name, reading.season.zone);
}

Checked<Said> take_file(Book& book, const Options& options, const Given& given, const std::string& name,
                        const ByteSource& bytes) {
    const auto taken =
        take_readings(book, act_of(options, EntryKind::import), given.site, name, bytes, answers_from(given));
    if (!taken) return taken.refusals();
    Said said = say_look(taken->look, given.site, name, book_zone(book));
    said.json["new"] = taken->fresh;
    said.json["entry"] = taken->entry ? Json(name_text(*taken->entry)) : Json(nullptr);
    said.text += taken->entry ? fmt::format("{} are new, entry {}\n", taken->fresh, name_text(*taken->entry))
                              : "all already held\n";
    return said;
}

const char* state_word(WatchedState state) {
    switch (state) {
        case WatchedState::taken:
            return "taken";
        case WatchedState::held:
            return "held";
        case WatchedState::waiting:
            return "waiting";
        case WatchedState::ready:
        case WatchedState::refused:
            break;
    }
    return "refused";
}

std::string watched_line(const WatchedFile& file) {
    switch (file.state) {
        case WatchedState::taken:
            return fmt::format("{}: {} readings of {}, {} new, entry {}{}\n", file.name, file.readings,
                               file.site, file.fresh, name_text(*file.entry),
                               file.unended ? "; a last line without an end is left" : "");
        case WatchedState::held:
            return fmt::format("{}: all held\n", file.name);
        case WatchedState::waiting:
            return fmt::format("{}: left, it may still be written\n", file.name);
        case WatchedState::ready:
        case WatchedState::refused:
            break;
    }
    return fmt::format("{}: refused\n", file.name);
}

Said say_watched(const std::string& folder, const std::vector<WatchedFile>& files) {
    Said said;
    said.json["folder"] = folder;
    for (const auto state :
         {WatchedState::taken, WatchedState::held, WatchedState::waiting, WatchedState::refused})
        said.json[state_word(state)] =
            std::count_if(files.begin(), files.end(), [&](const auto& file) { return file.state == state; });
    said.json["files"] = Json::array();
    for (const auto& file : files) {
        Json refusals = Json::array();
        for (const auto& refusal : file.refusals) {
            fmt::print(stderr, "{}\n", one_line(refusal));
            refusals.push_back({{"code", refusal.code},
                                {"where", refusal.where},
                                {"what", refusal.what},
                                {"mend", refusal.mend}});
        }
        if (file.state == WatchedState::refused) said.exit = refused;
        said.json["files"].push_back({{"file", file.name},
                                      {"site", file.site.empty() ? Json(nullptr) : Json(file.site)},
                                      {"state", state_word(file.state)},
                                      {"readings", file.readings},
                                      {"new", file.fresh},
                                      {"from_byte", file.from_byte},
                                      {"last_line_left", file.unended},
                                      {"notes", notes_json(file.notes)},
                                      {"entry", file.entry ? Json(name_text(*file.entry)) : Json(nullptr)},
                                      {"refusals", refusals}});
        said.text += watched_line(file);
    }
    if (files.empty()) said.text = "no files\n";
    return said;
}

int poll(const Options& options, const Given& given) {
    const Instant clock = act_of(options, EntryKind::import).at;
    const FolderWatch watch{given.poll, given.site, answers_from(given),
                            now(),      clock,      given.still_s * ms_per_second};
    return write_book(options, [&](Book& book) -> Checked<Said> {
        const auto files = look_through_folder(book, act_of(options, EntryKind::import), watch);
        if (!files) return files.refusals();
        return say_watched(given.poll, *files);
    });
}

int run(const Options& options, const Given& given) {
    if (given.file.empty() == given.poll.empty())
        throw CLI::ValidationError("--file", "one of --file and --poll is needed");
    if (!given.poll.empty() && given.only_try)
        throw CLI::ValidationError("--try", "looks at a --file, not at a folder");
    if (!given.poll.empty()) return poll(options, given);
    if (given.site.empty()) throw CLI::ValidationError("--site", "is needed: the site that the file is of");
    const std::string name = std::filesystem::path(given.file).filename().string();
    const auto bytes = open_regular_file(given.file, name, largest_file_bytes);
    if (!bytes) return refuse(options, bytes.refusals());
    if (given.only_try)
        return read_book(options,
                         [&](const Reading& reading) { return try_file(reading, given, name, **bytes); });
    return write_book(options, [&](Book& book) { return take_file(book, options, given, name, **bytes); });
}

}  // namespace

void add_readings_command(CLI::App& program, Options& options, Task& task) {
    auto given = std::make_shared<Given>();
    auto* command = add_command(program, options, "readings",
                                "take a logger's file in as it came, saying how it is read");
    add_write_options(*command, options);
    command->add_option("--file", given->file, "the logger's file");
    command->add_option("--poll", given->poll, "a folder: take its new and grown files in (for cron)");
    command->add_option("--still", given->still_s, "with --poll: leave files changed so many seconds ago")
        ->check(CLI::Range(0, 86400));
    command->add_option("--site", given->site, "the site that it is of; with --poll, that all are of");
    command->add_option("--zone", given->answers.zone, "the logger's clock: UTC, +12:00, Pacific/Auckland");
    command->add_option("--dates", given->dates,
                        "ymd, dmy, mdy; unix, unix_ms or excel of times that are a number; doy: a "
                        "year and the day of it");
    command->add_option("--column", given->answers.column, "the column of turbidity: its name or number");
    command->add_option("--rows", given->answers.rows, "which rows of a file of several sites");
    command->add_option("--decimal", given->decimal, "the decimal mark, . or ,");
    command->add_option("--missing", given->answers.missing,
                        "what stands for a missing value; none: nothing");
    command->add_flag("--try", given->only_try, "show what would be read, and take nothing in");
    command->callback(
        [&options, &task, given] { task = [&options, given] { return run(options, *given); }; });
}

}  // namespace spoilbook
