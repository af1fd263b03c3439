// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/take_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <ranges>
#include <set>

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
        refusals.push_back({"must-ask", file, question.text,
                            "say --" + question.about + (choices.empty() ? "" : ": " + choices)});
    }
    if (!refusals.empty()) return refusals;
    refusals = look.rows.refusals;
    if (look.rows.refused > refusals.size())
        refusals.push_back({"row", file,
                            fmt::format("{} rows more do not read", look.rows.refused - refusals.size()),
                            "mend a copy of the file, or say how it is to be read"});
    if (10 * look.rows.otherwise > look.rows.readings.size())
        refusals.push_back(
            {"two-values", file,
             fmt::format("{} of {} rows are at a time that had another value", look.rows.otherwise,
                         look.rows.readings.size()),
             "where the file is of several sites say --rows and what stands in this site's rows"});
    if (refusals.empty() && look.rows.readings.empty())
        refusals.push_back({"no-table", file, "no row is of this site", "look at it with --try"});
    return refusals;
}

/// How many readings are new; refused where the book has another value at their time.
Checked<std::size_t> fresh_among(const Book& book, const Id& site, const LoggerRows& rows,
                                 const std::string& file) {
    const auto held = held_readings(book, site);
    const Zone zone = book_zone(book);
    std::size_t fresh = 0;
    Refusals refusals;
    for (const auto& reading : rows.readings) {
        const auto [first, last] = std::equal_range(
            held.begin(), held.end(), reading, [](const auto& a, const auto& b) { return a.time < b.time; });
        fresh += first == last ? 1 : 0;
        if (first == last || std::find(first, last, reading) != last || refusals.size() >= 20) continue;
        const auto shown = [](const LoggerReading& one) {
            return one.value ? number_text(*one.value) : "nothing";
        };
        refusals.push_back({"other-values", file,
                            fmt::format("at {} the book has {}, the file {}",
                                        instant_text(reading.time, zone), shown(*first), shown(reading)),
                            "leave the reading out of a copy, or look whether zone and column are right"});
    }
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

/// How much of the beginning of a file the book has, in parts that follow each other, and how the last is
/// read.
struct HeldPart {
    std::size_t bytes = 0;
    std::optional<LoggerLayout> layout;
};

HeldPart held_part(const Book& book, const Id& site, const std::string& bytes) {
    std::vector<std::pair<std::string, LoggerLayout>> parts;
    for (const auto& file : files_of(book, site)) {
        auto layout = layout_from(file.how);
        auto part = layout ? book.material(file.digest) : std::nullopt;
        if (part && !part->empty()) parts.emplace_back(std::move(*part), std::move(*layout));
    }
    HeldPart held;
    for (bool more = true; more;) {
        const auto next = std::find_if(parts.begin(), parts.end(), [&](const auto& part) {
            return bytes.compare(held.bytes, part.first.size(), part.first) == 0;
        });
        more = next != parts.end();
        if (more) held = {held.bytes + next->first.size(), next->second};
    }
    return held;
}

/// What keeping them would bring, of what was looked at.
Checked<ReadingsTaken> prepared(const Book& book, const std::string& site, const std::string& file,
                                ReadingsLook look) {
    if (auto refusals = why_not(look, file); !refusals.empty()) return refusals;
    const auto fresh = fresh_among(book, *site_named(book, site), look.rows, file);
    if (!fresh) return fresh.refusals();
    return ReadingsTaken{std::move(look), *fresh, std::nullopt};
}

}  // namespace

Checked<ReadingsTaken> keep_readings(Book& book, const Act& act, const std::string& site,
                                     const std::string& file, const std::string& bytes, ReadingsTaken taken) {
    const auto id = site_named(book, site);
    if (!id) return id.refusals();
    if (taken.fresh == 0) return taken;
    const Kind& kind = definition<LoggerFile>().kind();
    const auto entry = book.change(act, [&](Change& change) -> Checked<Done> {
        const auto digest = change.keep(bytes);
        if (!digest) return digest.refusals();
        std::vector<Value> values(kind.fields.size());
        values[*kind.index_of("site")] = *id;
        values[*kind.index_of("file")] = free_name(files_of(change.book(), *id), file);
        values[*kind.index_of("digest")] = *digest;
        values[*kind.index_of("how")] = layout_text(taken.look.guess.layout);
        change.insert(kind, values);
        return Done{};
    });
    if (!entry) return entry.refusals();
    taken.entry = *entry;
    return taken;
}

Checked<ReadingsLook> look_at_readings(const Book& book, const std::string& site, const std::string& file,
                                       const std::string& bytes, const LoggerAnswers& answers) {
    const auto id = site_named(book, site);
    if (!id) return id.refusals();
    auto guess = guess_layout(bytes, file, site, answers, newest_layout(files_of(book, *id)));
    if (!guess) return guess.refusals();
    ReadingsLook look{std::move(*guess), {}};
    if (look.guess.questions.empty()) look.rows = read_logger_rows(bytes, look.guess.layout, file);
    return look;
}

Checked<ReadingsTaken> prepare_readings(const Book& book, const std::string& site, const std::string& file,
                                        const std::string& bytes, const LoggerAnswers& answers) {
    auto look = look_at_readings(book, site, file, bytes, answers);
    if (!look) return look.refusals();
    return prepared(book, site, file, std::move(*look));
}

Checked<ReadingsTaken> take_readings(Book& book, const Act& act, const std::string& site,
                                     const std::string& file, const std::string& bytes,
                                     const LoggerAnswers& answers) {
    auto taken = prepare_readings(book, site, file, bytes, answers);
    if (!taken) return taken.refusals();
    return keep_readings(book, act, site, file, bytes, std::move(*taken));
}

Checked<ReadingsTaken> take_new_readings(Book& book, const Act& act, const std::string& site,
                                         const std::string& file, const std::string& bytes,
                                         const LoggerAnswers& answers) {
    const auto id = site_named(book, site);
    if (!id) return id.refusals();
    const HeldPart held = held_part(book, *id, bytes);
    const std::size_t last = bytes.rfind(bytes.find('\n') == std::string::npos ? '\r' : '\n');
    const std::size_t end = std::max(held.bytes, last == std::string::npos ? 0 : last + 1);
    const std::string part = bytes.substr(held.bytes, end - held.bytes);
    Checked<ReadingsTaken> taken = ReadingsTaken{};
    if (held.layout && !part.empty()) {
        ReadingsLook look;
        look.guess.layout = *held.layout;
        look.guess.layout.first_row = 1;
        const auto before =
            std::count(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(held.bytes), '\n');
        look.rows = read_logger_rows(part, look.guess.layout,
                                     fmt::format("{} (lines counted from its line {})", file, before + 1));
        if (look.rows.readings.empty() && look.rows.refused == 0)
            return ReadingsTaken{std::move(look), 0, std::nullopt, held.bytes, end < bytes.size()};
        auto found = prepared(book, site, file, std::move(look));
        if (!found) return found.refusals();
        taken = keep_readings(book, act, site, file, part, std::move(*found));
    } else if (!held.layout) {
        taken = take_readings(book, act, site, file, part, answers);
    }
    if (!taken) return taken;
    taken->from_byte = held.bytes;
    taken->unended = end < bytes.size();
    return taken;
}

}  // namespace spoilbook
