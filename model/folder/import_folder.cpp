// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/import_folder.h"

#include <fmt/format.h>

#include <numeric>
#include <set>

#include "model/book/material_bytes.h"
#include "model/folder/match_rows.h"
#include "model/folder/planned_id.h"
#include "model/folder/regular_file.h"
#include "model/folder/season_notes.h"
#include "model/record/evidence_text.h"

namespace spoilbook {

namespace {

std::size_t sum_of(const std::map<std::string, std::size_t>& counts) {
    return std::accumulate(counts.begin(), counts.end(), std::size_t{0},
                           [](std::size_t sum, const auto& count) { return sum + count.second; });
}

/// Writes the rows of a plan; planned ids become the book's as the rows land.
class Landing {
 public:
    Landing(const ImportPlan& plan, Change& change, ImportOutcome& outcome)
        : board_(plan.board), change_(change), outcome_(outcome) {}

    Checked<Done> land() {
        for (std::size_t table = 0; table < board_.contents.tables.size(); ++table)
            land_table(table);
        return keep_files();
    }

 private:
    void land_table(std::size_t table) {
        const GivenTable& given = board_.contents.tables[table];
        auto& ids = landed_.emplace_back(given.rows.size());
        for (std::size_t i = 0; i < given.rows.size(); ++i) {
            want_evidence(given, given.rows[i]);
            if (!board_.is_fresh(table, i)) {
                ids[i] = board_.ids[table][i];
                ++outcome_.already_held[given.kind->name];
                continue;
            }
            ids[i] = change_.insert(*given.kind, with_real_ids(given.rows[i].values));
            ++outcome_.added[given.kind->name];
            const std::string digest = text_of(*given.kind, given.rows[i].values, "digest");
            if (!digest.empty()) wanted_.insert(digest);
        }
    }

    /// Also of a row that the book has: it may have come without its files.
    void want_evidence(const GivenTable& given, const GivenRow& row) {
        if (given.kind->name != "duty_done") return;
        for (const auto& file : evidence_files(text_of(*given.kind, row.values, "evidence"))) {
            if (!material_bytes(change_.book(), file.digest)) wanted_.insert(file.digest);
        }
    }

    std::vector<Value> with_real_ids(std::vector<Value> values) const {
        for (Value& value : values) {
            const auto* id = std::get_if<Id>(&value);
            if (id == nullptr) continue;
            if (const auto planned = planned_row(*id)) value = landed_[planned->table][planned->row];
        }
        return values;
    }

    /// The files of the rows that landed, read again: what was checked is what is kept.
    Checked<Done> keep_files() {
        for (const GivenFile& file : board_.contents.files) {
            if (wanted_.erase(file.digest) == 0) continue;
            auto bytes = read_regular_file(file.path, file.name, largest_file_bytes);
            if (!bytes) return bytes.refusals();
            auto digest = change_.keep(*bytes);
            if (!digest) return digest.refusals();
            if (*digest == file.digest) continue;
            return Refusal{"changed-meanwhile", file.name, "the file changed while it was read",
                           "leave it alone and begin again"};
        }
        return Done{};
    }

    const MatchBoard& board_;
    Change& change_;
    ImportOutcome& outcome_;
    std::vector<std::vector<Id>> landed_;
    std::set<std::string> wanted_;
};

/// The tracks of the book whose trips have another one in the folder.
Checked<Done> strike_other_tracks(Change& change, const GivenTable& given, Notes& notes) {
    const Kind& track = *given.kind;
    for (const GivenRow& row : given.rows) {
        const auto trip = change.book().labelled(kind("trip"), text_of(track, row.values, "trip"));
        if (!trip) continue;
        for (const Row& held : change.book().rows(track)) {
            const bool is_other =
                MatchBoard::reference(track, held.values, "trip") == trip->id &&
                text_of(track, held.values, "digest") != text_of(track, row.values, "digest");
            if (!is_other) continue;
            if (auto struck = change.strike(track, held.id); !struck) return struck;
            notes.push_back({"trip " + text_of(track, row.values, "trip"),
                             "its track " + text_of(track, held.values, "file") +
                                 " is struck out: the one that came takes its place"});
        }
    }
    return Done{};
}

/// Planned and landed within one change, after the tracks that it replaces are struck out: refused, nothing
/// is.
Checked<ImportOutcome> import_replacing_tracks(Book& book, FolderContents contents, const Act& act) {
    ImportOutcome outcome;
    Act import = act;
    import.kind = EntryKind::import;
    auto entry = book.change(import, [&](Change& change) -> Checked<Done> {
        if (auto struck = strike_other_tracks(change, contents.table("track"), outcome.notes); !struck)
            return struck;
        const auto plan = plan_import(std::move(contents), &change.book());
        if (!plan) return plan.refusals();
        outcome.notes.insert(outcome.notes.end(), plan->notes.begin(), plan->notes.end());
        return Landing(*plan, change, outcome).land();
    });
    if (!entry) return entry.refusals();
    outcome.entry = *entry;
    return outcome;
}

}  // namespace

std::size_t ImportOutcome::added_in_all() const {
    return sum_of(added);
}

std::size_t ImportOutcome::already_held_in_all() const {
    return sum_of(already_held);
}

std::optional<FolderBasis> basis_of(const Book& book) {
    const Kind& harbour = kind("harbour");
    const auto rows = book.rows(harbour);
    if (rows.empty()) return std::nullopt;
    FolderBasis basis{text_of(harbour, rows.front().values, "zone"), std::nullopt};
    const Value& epsg = value_of(harbour, rows.front().values, "epsg");
    if (const auto* code = std::get_if<std::int64_t>(&epsg)) basis.epsg = static_cast<int>(*code);
    return basis;
}

Checked<ImportPlan> plan_import(FolderContents contents, const Book* book) {
    MatchBoard board(std::move(contents), book);
    match_rows(board);
    if (board.complaints.any()) return board.complaints.refusals();
    note_season(board);
    Notes notes = board.complaints.notes();
    return ImportPlan{std::move(board), std::move(notes)};
}

Checked<ImportOutcome> land(Book& book, const ImportPlan& plan, const Act& act) {
    ImportOutcome outcome;
    Act import = act;
    import.kind = EntryKind::import;
    auto entry = book.change(import, [&](Change& change) { return Landing(plan, change, outcome).land(); });
    if (!entry) return entry.refusals();
    outcome.entry = *entry;
    outcome.notes = plan.notes;
    return outcome;
}

Checked<ImportOutcome> import_folder(Book& book, const std::string& folder, const Act& act) {
    auto contents = read_folder(folder, basis_of(book));
    // Who gives a reason means the track that comes: the one that the trip has was another's.
    if (!act.why.empty()) return import_replacing_tracks(book, std::move(contents), act);
    auto plan = plan_import(std::move(contents), &book);
    if (!plan) return plan.refusals();
    return land(book, *plan, act);
}

}  // namespace spoilbook
