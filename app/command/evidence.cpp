// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/evidence.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "model/book/season.h"
#include "model/consent/duty_calendar.h"
#include "model/folder/regular_file.h"
#include "model/logging/mark_done.h"
#include "model/record/evidence_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

struct DoneGiven {
    std::string condition, consent, covers_from, at, evidence, remarks;
    std::vector<std::string> files;
};

struct FileAsked {
    std::string file, to;
};

Checked<std::vector<EvidenceBytes>> files_given(const std::vector<std::string>& paths) {
    std::vector<EvidenceBytes> files;
    for (const auto& path : paths) {
        auto bytes = read_regular_file(path, path, largest_file_bytes);
        if (!bytes) return bytes.refusals();
        files.push_back({std::filesystem::path(path).filename().string(), std::move(*bytes)});
    }
    return files;
}

/// Which time of the duty the record is for; a record that is for none closes nothing, and that is told.
void say_what_it_closes(const Book& book, const Id& record, Instant as_at, Said& said) {
    const Season season = read_season(book);
    const Ledger ledger(season);
    const auto times = duty_calendar(ledger, as_at);
    const auto time = std::find_if(times.begin(), times.end(), [&](const DutyTime& one) {
        return one.done != nullptr && one.done->id == record;
    });
    if (time == times.end()) {
        said.json["closes"] = nullptr;
        said.text +=
            "  nothing of it was open by then, so it closes nothing: say which time with --covers-from\n";
        return;
    }
    const Zone& zone = season.zone;
    said.json["closes"] = {
        {"covers_from", time->covers ? instant_or_null(time->covers->from, zone) : Json(nullptr)},
        {"covers_to", time->covers ? instant_or_null(time->covers->to, zone) : Json(nullptr)},
        {"arises", instant_or_null(time->arises, zone)}};
    if (time->covers)
        said.text += fmt::format("  for {} to {}\n", day_text(zone.day_of(time->covers->from)),
                                 day_text(zone.day_of(time->covers->to - 1)));
}

Checked<Said> say_done(Book& book, const Options& options, const DoneGiven& given) {
    const Zone zone = book_zone(book);
    DutyMark mark{given.consent,  given.condition, {}, clock_of(options), options.by,
                  given.evidence, given.remarks,   {}};
    if (!given.covers_from.empty()) {
        const auto from = time_given("--covers-from", given.covers_from, zone);
        if (!from) return from.refusals();
        mark.covers_from = *from;
    }
    if (!given.at.empty()) {
        const auto at = time_given("--at", given.at, zone);
        if (!at) return at.refusals();
        mark.done_at = *at;
    }
    auto files = files_given(given.files);
    if (!files) return files.refusals();
    mark.files = std::move(*files);
    const auto done = mark_done(book, act_of(options), mark);
    if (!done) return done.refusals();
    Said said;
    const Kind& kind = definition<DutyDone>().kind();
    const auto row = definition<DutyDone>().read(*book.row(kind, done->id));
    said.json = {{"id", row.duty_done},
                 {"condition", row.condition},
                 {"done_at", instant_or_null(row.done_at, zone)},
                 {"evidence", row.evidence},
                 {"entry", done->entry ? Json(name_text(*done->entry)) : Json(nullptr)}};
    said.text = fmt::format("{}: condition {} done {}\n", row.duty_done, row.condition,
                            instant_text(mark.done_at, zone));
    say_what_it_closes(book, done->id, std::max(clock_of(options), mark.done_at), said);
    for (const auto& file : evidence_files(row.evidence))
        said.text += fmt::format("  {}  {}\n", file.digest, file.name);
    return said;
}

/// Never over another file: evidence is not mixed up.
Checked<Done> write_new_file(const std::string& path, const std::string& bytes) {
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored))
        return Refusal{"not-empty", path, "there is a file of that name", "choose another name"};
    std::ofstream out(path, std::ios::binary);
    out << bytes;
    out.close();
    if (out) return Done{};
    std::filesystem::remove(path, ignored);
    return Refusal{"cannot-write", path, "the file cannot be written there",
                   "choose a folder that you may write to, with room"};
}

Json file_json(const DutyDone& done, const EvidenceFile& file, const std::optional<std::string>& bytes,
               const Zone& zone) {
    return {{"id", done.duty_done.empty() ? Json(nullptr) : Json(done.duty_done)},
            {"condition", done.condition},
            {"covers_from", instant_or_null(done.covers_from, zone)},
            {"done_at", instant_or_null(done.done_at, zone)},
            {"file", file.name},
            {"digest", file.digest},
            {"bytes", bytes ? Json(bytes->size()) : Json(nullptr)}};
}

Checked<Said> say_evidence(const Reading& reading, const FileAsked& asked) {
    Said said;
    said.json["files"] = Json::array();
    for (const auto& done : reading.season.duties_done.rows()) {
        for (const auto& file : evidence_files(done.evidence)) {
            if (!asked.file.empty() && file.name != asked.file && !file.digest.starts_with(asked.file))
                continue;
            const auto bytes = reading.book->material(file.digest);
            said.json["files"].push_back(file_json(done, file, bytes, reading.season.zone));
            said.text += fmt::format("{}  condition {}  {}{}\n", file.digest, done.condition, file.name,
                                     bytes ? "" : ": not in the book");
            if (asked.to.empty()) continue;
            if (!bytes)
                return Refusal{"no-material", file.name, "the book does not hold this file: " + file.digest,
                               "look for it where it came from"};
            auto written = write_new_file(asked.to, *bytes);
            if (!written) return written.refusals();
            said.text += "written to " + asked.to + "\n";
            return said;
        }
    }
    if (!asked.to.empty())
        return Refusal{"no-such-row", asked.file, "no evidence is a file of that name or digest",
                       "see them with sbk evidence"};
    if (said.text.empty()) said.text = "no file is kept as evidence\n";
    return said;
}

void add_done(CLI::App& program, Options& options, Task& task) {
    auto given = std::make_shared<DoneGiven>();
    auto* done = add_command(program, options, "done", "marks what a condition asked for as done");
    add_write_options(*done, options);
    done->add_option("CONDITION", given->condition, "number of a condition of kind duty")->required();
    done->add_option("--consent", given->consent, "where two consents have that number");
    done->add_option("--covers-from", given->covers_from,
                     "which time: its period's begin, its event, or a day of it; else the earliest open");
    done->add_option("--at", given->at, "when it was done; else now");
    done->add_option("--evidence", given->evidence, "what shows it, in words");
    done->add_option("--file", given->files, "a file that shows it: kept in the book with its SHA-256")
        ->type_size(1)
        ->allow_extra_args(false);
    done->add_option("--remarks", given->remarks, "remarks");
    done->callback([&options, &task, given] {
        task = [&options, given] {
            return write_book(options, [&](Book& book) { return say_done(book, options, *given); });
        };
    });
}

}  // namespace

void add_evidence_commands(CLI::App& program, Options& options, Task& task) {
    add_done(program, options, task);
    auto asked = std::make_shared<FileAsked>();
    auto* evidence =
        add_command(program, options, "evidence", "the files that show what was done, and one saved out");
    add_read_options(*evidence, options);
    auto* file = evidence->add_option("--file", asked->file, "its name, or how its digest begins");
    evidence->add_option("--to", asked->to, "write that file here")->needs(file);
    evidence->callback([&options, &task, asked] {
        task = [&options, asked] {
            return read_book(options, [&](const Reading& reading) { return say_evidence(reading, *asked); });
        };
    });
}

}  // namespace spoilbook
