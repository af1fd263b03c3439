// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/take_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <ranges>
#include <set>

#include "model/book/material_bytes.h"
#include "model/book/season.h"
#include "model/folder/match_material.h"
#include "model/record/watched_water.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

Checked<Id> site_named(const Book& book, const std::string& site) {
    const auto row = book.labelled(definition<Site>().kind(), site);
    if (!row) return Refusal{"no-such-row", "site " + site, "there is no such site", "enter the site first"};
    return row->id;
}

/// The files of one site, oldest first.
std::vector<LoggerFile> files_of(const Book& book, const Id& site) {
    std::vector<LoggerFile> files;
    for (const Row& row : book.rows(definition<LoggerFile>().kind())) {
        auto file = definition<LoggerFile>().read(row);
        if (file.site == site) files.push_back(std::move(file));
    }
    return files;
}

std::optional<LoggerLayout> newest_layout(const std::vector<LoggerFile>& files) {
    for (const auto& file : files | std::views::reverse) {
        if (auto layout = layout_from(file.how)) return layout;
    }
    return std::nullopt;
}

Refusals why_not(const ReadingsLook& look, const std::string& file) {
    Refusals refusals;
    for (const auto& question : look.guess.questions) {
        std::string choices;
        for (const auto& choice : question.choices)
            choices += (choices.empty() ? "" : ", ") + choice;
        // What the table itself lacks no answer mends.
        refusals.push_back({"must-ask", file, question.text,
                            question.about == "table"
                                ? "mend a copy of the file, and take that in"
                                : "say --" + question.about + (choices.empty() ? "" : ": " + choices)});
    }
    if (!refusals.empty()) return refusals;
    refusals = look.rows.refusals;
    if (look.rows.refused > refusals.size())
        refusals.push_back({"row", file,
                            fmt::format("{} rows more do not read", look.rows.refused - refusals.size()),
                            "mend a copy of the file, or say how it is to be read"});
    if (10 * look.rows.otherwise > look.rows.readings)
        refusals.push_back(
            {"two-values", file,
             fmt::format("{} of {} rows are at a time that had another value", look.rows.otherwise,
                         look.rows.readings),
             "where the file is of several sites say --rows and what stands in this site's rows"});
    if (refusals.empty() && look.rows.readings == 0)
        refusals.push_back({"no-table", file, "no row is of this site", "look at it with --try"});
    return refusals;
}

/// How many readings are new; refused where the book has another value at their time.
Checked<std::size_t> fresh_among(const Book& book, const Id& site, const ByteSource& bytes,
                                 const ReadingsLook& look, const std::string& file) {
    const auto held = held_readings(book, site, look.rows.span);
    if (held.empty()) return look.rows.readings;
    const Zone zone = book_zone(book);
    std::size_t fresh = 0;
    Refusals refusals;
    each_logger_reading(bytes, look.guess.layout, file, [&](const LoggerReading& reading) {
        const auto [first, last] = std::equal_range(
            held.begin(), held.end(), reading, [](const auto& a, const auto& b) { return a.time < b.time; });
        fresh += first == last ? 1 : 0;
        if (first == last || std::find(first, last, reading) != last || refusals.size() >= 20) return;
        const auto shown = [](const LoggerReading& one) {
            return one.value ? number_text(*one.value) : "nothing";
        };
        refusals.push_back({"other-values", file,
                            fmt::format("at {} the book has {}, the file {}",
                                        instant_text(reading.time, zone), shown(*first), shown(reading)),
                            "leave the reading out of a copy, or look whether zone and column are right"});
    });
    if (!refusals.empty()) return refusals;
    return fresh;
}

/// The file's own name, or one with a number where the site has another file of that name.
std::string free_name(const std::vector<LoggerFile>& files, const std::string& file) {
    std::set<std::string> names;
    for (const auto& one : files)
        names.insert(one.file);
    std::string free = file;
    for (int n = 2; names.contains(free); ++n)
        free = fmt::format("{}-{}", file, n);
    return free;
}

constexpr std::size_t piece_bytes = std::size_t{1} << 18;

/// Whether `bytes` go on with `part` from a place on.
bool goes_on_with(const ByteSource& bytes, std::uint64_t from, const ByteSource& part) {
    if (part.size() > bytes.size() - from) return false;
    for (std::uint64_t at = 0; at < part.size(); at += piece_bytes) {
        const std::string piece = part.piece(at, piece_bytes);
        if (bytes.piece(from + at, piece.size()) != piece) return false;
    }
    return true;
}

/// How much of the beginning of a file the book has, in parts that follow each other, and how the last is
/// read.
struct HeldPart {
    std::uint64_t bytes = 0;
    std::optional<LoggerLayout> layout;
};

HeldPart held_part(const Book& book, const Id& site, const ByteSource& bytes) {
    std::vector<std::pair<std::unique_ptr<ByteSource>, LoggerLayout>> parts;
    for (const auto& file : files_of(book, site)) {
        auto layout = layout_from(file.how);
        auto part = layout ? material_bytes(book, file.digest) : nullptr;
        if (part && part->size() > 0) parts.emplace_back(std::move(part), std::move(*layout));
    }
    HeldPart held;
    for (bool more = true; more;) {
        const auto next = std::find_if(parts.begin(), parts.end(), [&](const auto& part) {
            return goes_on_with(bytes, held.bytes, *part.first);
        });
        more = next != parts.end();
        if (more) held = {held.bytes + next->first->size(), next->second};
    }
    return held;
}

/// Just behind the last of these marks; 0 where there is none.
std::uint64_t behind_last(const ByteSource& bytes, char mark) {
    for (std::uint64_t end = bytes.size(); end > 0;) {
        const std::uint64_t from = end > piece_bytes ? end - piece_bytes : 0;
        const auto place = bytes.piece(from, end - from).rfind(mark);
        if (place != std::string::npos) return from + place + 1;
        end = from;
    }
    return 0;
}

std::size_t lines_of(const ByteSource& bytes) {
    std::size_t lines = 0;
    for (std::uint64_t from = 0; from < bytes.size(); from += piece_bytes) {
        const std::string piece = bytes.piece(from, piece_bytes);
        lines += static_cast<std::size_t>(std::count(piece.begin(), piece.end(), '\n'));
    }
    return lines;
}

/// What keeping them would bring, of what was looked at.
Checked<ReadingsTaken> prepared(const Book& book, const std::string& site, const std::string& file,
                                ReadingsLook look, std::shared_ptr<const PackedFile> packed) {
    if (auto refusals = why_not(look, file); !refusals.empty()) return refusals;
    const auto fresh = fresh_among(book, *site_named(book, site), *packed, look, file);
    if (!fresh) return fresh.refusals();
    ReadingsTaken taken{std::move(look), *fresh, std::nullopt};
    taken.packed = std::move(packed);
    return taken;
}

/// Refusals of the packing know no name.
Checked<std::shared_ptr<const PackedFile>> pack(const ByteSource& bytes, const std::string& file) {
    auto packed = PackedFile::of(bytes);
    if (packed) return packed;
    Refusals refusals = packed.refusals();
    for (auto& refusal : refusals)
        refusal.where = file;
    return refusals;
}

}  // namespace

Checked<ReadingsTaken> keep_readings(Book& book, const Act& act, const std::string& site,
                                     const std::string& file, ReadingsTaken prepared) {
    const auto id = site_named(book, site);
    if (!id) return id.refusals();
    if (prepared.fresh == 0) return prepared;
    const Kind& kind = definition<LoggerFile>().kind();
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        std::vector<Value> values(kind.fields.size());
        values[*kind.index_of("site")] = *id;
        values[*kind.index_of("file")] = free_name(files_of(change.book(), *id), file);
        values[*kind.index_of("digest")] = keep_packed(change, *prepared.packed);
        values[*kind.index_of("how")] = layout_text(prepared.look.guess.layout);
        change.insert(kind, values);
        return Done{};
    });
    if (!entry) return entry.refusals();
    prepared.entry = *entry;
    return prepared;
}

Notes notes_of(const LoggerRows& rows, const std::string& file, const Zone& zone) {
    Notes notes;
    const auto add = [&](const UnlikelyTimes& times, const char* where, const char* what) {
        if (times.readings == 0) return;
        notes.push_back({fmt::format("{} line {}", file, times.line),
                         fmt::format("{} {}, the first at {}: kept; see whether {} right",
                                     times.readings == 1 ? "a reading lies"
                                                         : fmt::format("{} readings lie", times.readings),
                                     where, instant_text(times.first, zone), what)});
    };
    add(rows.later, "in the future", "the logger's clock and the zone are");
    add(rows.unset, "before 2000-01-02", "the logger's clock was set and is");
    return notes;
}

Checked<ReadingsLook> look_at_readings(const Book& book, const std::string& site, const std::string& file,
                                       const ByteSource& bytes, const LoggerAnswers& answers, Instant now) {
    const auto id = site_named(book, site);
    if (!id) return id.refusals();
    auto guess = guess_layout(bytes, file, site, answers, newest_layout(files_of(book, *id)));
    if (!guess) return guess.refusals();
    ReadingsLook look{std::move(*guess), {}};
    if (look.guess.questions.empty()) look.rows = read_logger_rows(bytes, look.guess.layout, file, {}, now);
    return look;
}

Checked<ReadingsTaken> prepare_readings(const Book& book, const std::string& site, const std::string& file,
                                        const ByteSource& bytes, const LoggerAnswers& answers, Instant now) {
    auto packed = pack(bytes, file);
    if (!packed) return packed.refusals();
    auto look = look_at_readings(book, site, file, **packed, answers, now);
    if (!look) return look.refusals();
    return prepared(book, site, file, std::move(*look), std::move(*packed));
}

Checked<ReadingsTaken> take_readings(Book& book, const Act& act, const std::string& site,
                                     const std::string& file, const ByteSource& bytes,
                                     const LoggerAnswers& answers) {
    auto taken = prepare_readings(book, site, file, bytes, answers, act.at);
    if (!taken) return taken.refusals();
    return keep_readings(book, act, site, file, std::move(*taken));
}

Checked<ReadingsTaken> prepare_new_readings(const Book& book, const std::string& site,
                                            const std::string& file, const ByteSource& bytes,
                                            const LoggerAnswers& answers, Instant now) {
    const auto id = site_named(book, site);
    if (!id) return id.refusals();
    const HeldPart held = held_part(book, *id, bytes);
    const std::uint64_t line_feed = behind_last(bytes, '\n');
    const std::uint64_t end = std::max(held.bytes, line_feed > 0 ? line_feed : behind_last(bytes, '\r'));
    const PartOfBytes part(bytes, held.bytes, end);
    Checked<ReadingsTaken> ready = ReadingsTaken{};
    if (held.layout && part.size() > 0) {
        auto packed = pack(part, file);
        if (!packed) return packed.refusals();
        ReadingsLook look;
        look.guess.layout = *held.layout;
        look.guess.layout.first_row = 1;
        const auto before = lines_of(PartOfBytes(bytes, 0, held.bytes));
        const auto place = fmt::format("{} (lines counted from its line {})", file, before + 1);
        look.rows = read_logger_rows(**packed, look.guess.layout, place, {}, now);
        if (look.rows.readings == 0 && look.rows.refused == 0)
            ready = ReadingsTaken{std::move(look), 0, std::nullopt};
        else
            ready = prepared(book, site, file, std::move(look), std::move(*packed));
    } else if (!held.layout) {
        ready = prepare_readings(book, site, file, part, answers, now);
    }
    if (!ready) return ready;
    ready->from_byte = held.bytes;
    ready->to_byte = end;
    ready->unended = end < bytes.size();
    return ready;
}

}  // namespace spoilbook
