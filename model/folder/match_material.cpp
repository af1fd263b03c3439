// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/match_material.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "model/book/material_bytes.h"
#include "model/book/season.h"
#include "model/folder/planned_id.h"
#include "model/folder/references.h"
#include "model/folder/regular_file.h"
#include "model/record/evidence_text.h"
#include "model/turbidity/logger_rows.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

Zone zone_of(const MatchBoard& board) {
    const auto zone = Zone::named(board.contents.zone);
    return zone ? *zone : Zone::utc();
}

std::string shown(const LoggerReading& reading) {
    return reading.value ? number_text(*reading.value) : "nothing";
}

/// The book's rows of a material kind that belong to `parent`.
std::vector<const Row*> held_of(MatchBoard& board, std::size_t table, const std::string& field,
                                const Id& parent) {
    std::vector<const Row*> found;
    const KindShelf& shelf = board.shelves[table];
    for (const Row& row : shelf.held()) {
        if (MatchBoard::reference(shelf.kind(), row.values, field) == parent) found.push_back(&row);
    }
    return found;
}

bool earlier(const LoggerReading& a, const LoggerReading& b) {
    return a.time < b.time || (a.time == b.time && a.value < b.value);
}

/// One logger's file beside what the book has of its site.
class LoggerMatching {
 public:
    LoggerMatching(MatchBoard& board, GivenTable& table, GivenRow& row)
        : board_(board), table_(table), row_(row), zone_(zone_of(board)) {}

    /// True where the file has a reading that the book has not.
    bool has_news(const Id& site) {
        const auto held = held_readings(*board_.book, site);
        std::size_t others = 0;
        bool news = false;
        for (const LoggerReading& reading : given()) {
            const auto [first, last] =
                std::equal_range(held.begin(), held.end(), reading,
                                 [](const auto& a, const auto& b) { return a.time < b.time; });
            if (first == last) {
                news = true;
            } else if (std::find(first, last, reading) == last && ++others <= most_shown) {
                refuse(fmt::format("at {} the book has {}, the folder {}", instant_text(reading.time, zone_),
                                   shown(*first), shown(reading)));
            }
        }
        if (others > most_shown) refuse(fmt::format("{} more readings are other", others - most_shown));
        return news;
    }

    /// A name that no file of the book has.
    void rename(const std::vector<const Row*>& held) {
        const std::size_t place = *table_.kind->index_of("file");
        std::set<std::string> names;
        for (const Row* row : held)
            names.insert(text_of(*table_.kind, row->values, "file"));
        const std::string name = text_of(*table_.kind, row_.values, "file");
        const std::string stem = name.substr(0, name.rfind('.'));
        std::string free = name;
        for (int n = 2; names.contains(free); ++n)
            free = fmt::format("{}-{}.csv", stem, n);
        row_.values[place] = free;
    }

 private:
    static constexpr std::size_t most_shown = 20;

    std::vector<LoggerReading> given() {
        const std::string digest = text_of(*table_.kind, row_.values, "digest");
        for (const GivenFile& file : board_.contents.files) {
            if (file.digest != digest) continue;
            auto bytes = read_regular_file(file.path, file.name, largest_file_bytes);
            Complaints noted_already;
            if (bytes) return read_logger(*bytes, zone_, file.name, noted_already);
        }
        return {};
    }
    void refuse(std::string what) {
        board_.complaints.refuse(row_.path, {"other-values", where(table_.file, row_), std::move(what),
                                             "correct the folder, or leave the reading out"});
    }

    MatchBoard& board_;
    GivenTable& table_;
    GivenRow& row_;
    Zone zone_;
};

/// Two grids of one name could not both stand in surveys/ when the book is written out.
void refuse_other_file_of_name(MatchBoard& board, std::size_t table, const GivenRow& row) {
    const GivenTable& given = board.contents.tables[table];
    for (const Row& held : board.shelves[table].held()) {
        const bool same_name =
            value_of(*given.kind, held.values, "file") == value_of(*given.kind, row.values, "file");
        const Value& digest = value_of(*given.kind, held.values, "digest");
        if (!same_name || is_blank(digest) || digest == value_of(*given.kind, row.values, "digest")) continue;
        board.complaints.refuse(given.file,
                                {"other-values", where(given.file, row, "file"),
                                 fmt::format("survey {} in the book has another file of this name",
                                             text_of(*given.kind, held.values, "survey")),
                                 "give the new file a name of its own"});
        return;
    }
}

}  // namespace

std::vector<LoggerReading> held_readings(const Book& book, const Id& site,
                                         const std::optional<Period>& span) {
    const Kind& files = kind("logger_file");
    std::vector<LoggerReading> readings;
    const auto add = [&](const LoggerReading& reading) {
        if (!span || span->contains(reading.time)) readings.push_back(reading);
    };
    for (const Row& row : book.rows(files)) {
        if (MatchBoard::reference(files, row.values, "site") != site) continue;
        const auto digest = text_of(files, row.values, "digest");
        const auto file = text_of(files, row.values, "file");
        if (const auto layout = layout_from(text_of(files, row.values, "how"))) {
            if (const auto bytes = material_bytes(book, digest))
                each_logger_reading(*bytes, *layout, file, add);
        } else if (const auto bytes = book.material(digest)) {
            Complaints taken_already;
            for (const auto& reading : read_logger(*bytes, book_zone(book), file, taken_already))
                add(reading);
        }
    }
    if (!std::is_sorted(readings.begin(), readings.end(), earlier))
        std::sort(readings.begin(), readings.end(), earlier);
    readings.erase(std::unique(readings.begin(), readings.end()), readings.end());
    return readings;
}

void match_tracks(MatchBoard& board, std::size_t table) {
    GivenTable& given = board.contents.tables[table];
    for (std::size_t i = 0; i < given.rows.size(); ++i) {
        resolve_references(board, table, i);
        board.ids[table][i] = planned_id({table, i});
        const GivenRow& row = given.rows[i];
        const Id trip = MatchBoard::reference(*given.kind, row.values, "trip");
        if (trip.is_nil()) continue;
        for (const Row* held : held_of(board, table, "trip", trip)) {
            board.ids[table][i] = held->id;
            if (value_of(*given.kind, held->values, "digest") == value_of(*given.kind, row.values, "digest"))
                continue;
            board.complaints.refuse(
                row.path,
                {"other-values", where(given.file, row),
                 fmt::format("the book has another track of this trip: {} with SHA-256 {}, the folder {}",
                             text_of(*given.kind, held->values, "file"),
                             text_of(*given.kind, held->values, "digest"),
                             text_of(*given.kind, row.values, "digest")),
                 "leave the track out, or say why it takes the other's place (--why)"});
        }
    }
}

void match_logger_files(MatchBoard& board, std::size_t table) {
    GivenTable& given = board.contents.tables[table];
    for (std::size_t i = 0; i < given.rows.size(); ++i) {
        resolve_references(board, table, i);
        board.ids[table][i] = planned_id({table, i});
        GivenRow& row = given.rows[i];
        const Id site = MatchBoard::reference(*given.kind, row.values, "site");
        const auto held = site.is_nil() ? std::vector<const Row*>{} : held_of(board, table, "site", site);
        if (held.empty()) continue;
        const Value& digest = value_of(*given.kind, row.values, "digest");
        const auto same = std::find_if(held.begin(), held.end(), [&](const Row* one) {
            return value_of(*given.kind, one->values, "digest") == digest;
        });
        LoggerMatching matching(board, given, row);
        if (same != held.end()) {
            board.ids[table][i] = (*same)->id;
        } else if (!matching.has_news(site)) {
            board.ids[table][i] = held.front()->id;
        } else {
            matching.rename(held);
        }
    }
}

void fill_survey_digests(MatchBoard& board, std::size_t table) {
    GivenTable& given = board.contents.tables[table];
    const std::size_t digest = *given.kind->index_of("digest");
    std::set<Value> there;
    for (const GivenFile& file : board.contents.files)
        there.insert(Value{file.digest});
    for (GivenRow& row : given.rows) {
        const std::string file = text_of(*given.kind, row.values, "file");
        if (file.empty()) continue;
        if (there.contains(row.values[digest])) {
            refuse_other_file_of_name(board, table, row);
            continue;
        }
        const Row* held = board.shelves[table].held_by_key(label_key(*given.kind, row.values));
        if (held != nullptr) {
            if (is_blank(row.values[digest])) row.values[digest] = held->values[digest];
            continue;
        }
        board.complaints.refuse(
            given.file, {"no-file", where(given.file, row, "file"),
                         fmt::format("surveys/{} is not there", file), "put the grid's file into surveys/"});
    }
}

void note_missing_evidence(MatchBoard& board, std::size_t table) {
    const GivenTable& given = board.contents.tables[table];
    std::set<std::string> there;
    for (const GivenFile& file : board.contents.files)
        there.insert(file.digest);
    for (const GivenRow& row : given.rows) {
        for (const auto& file : evidence_files(text_of(*given.kind, row.values, "evidence"))) {
            if (there.contains(file.digest)) continue;
            if (board.book != nullptr && material_bytes(*board.book, file.digest)) continue;
            board.complaints.note(where(given.file, row, "evidence"),
                                  fmt::format("{} is neither in evidence/ nor in the book", file.name));
        }
    }
}

}  // namespace spoilbook
