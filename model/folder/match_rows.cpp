// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/match_rows.h"

#include <fmt/format.h>

#include "model/folder/match_material.h"
#include "model/folder/planned_id.h"
#include "model/folder/references.h"

namespace spoilbook {

namespace {

/// The rows of one table, matched one after the other.
class TableMatching {
 public:
    TableMatching(MatchBoard& board, std::size_t table)
        : board_(board),
          table_(table),
          given_(board.contents.tables[table]),
          kind_(*given_.kind),
          shelf_(board.shelves[table]),
          json_at_fault_(kind_.form != FileForm::csv && board.complaints.any_of(given_.file)) {}

    void match() {
        for (std::size_t i = 0; i < given_.rows.size(); ++i) {
            resolve_references(board_, table_, i);
            board_.ids[table_][i] = planned_id({table_, i});
            match_row(i);
            shelf_.name(given_.rows[i].values, board_.ids[table_][i]);
        }
    }

 private:
    void match_row(std::size_t i) {
        GivenRow& row = given_.rows[i];
        const std::string key = label_key(kind_, row.values);
        if (key.empty()) {
            if (!kind_.label_required) match_unlabelled(i);
            return;
        }
        const auto [first, is_first] = first_by_key_.emplace(key, i);
        if (!is_first) {
            refuse({"twice", where(given_.file, row),
                    fmt::format("the {} {} stands already: {}", kind_.name, name_of(row),
                                where(given_.file, given_.rows[first->second])),
                    "give each its own"});
            return;
        }
        if (const Row* held = shelf_.held_by_key(key)) compare(i, *held);
    }

    /// Rows without a label: as many as the book has of the same values are already held.
    void match_unlabelled(std::size_t i) {
        if (shelf_.held().empty()) return;
        if (unlabelled_.empty()) {
            for (const Row& row : shelf_.held()) {
                if (label_key(kind_, row.values).empty())
                    unlabelled_[whole_key(row.values)].push_back(row.id);
            }
        }
        const auto found = unlabelled_.find(whole_key(given_.rows[i].values));
        if (found == unlabelled_.end() || found->second.empty()) return;
        board_.ids[table_][i] = found->second.back();
        found->second.pop_back();
    }

    void compare(std::size_t i, const Row& held) {
        const GivenRow& row = given_.rows[i];
        std::string differs;
        for (std::size_t field = 0; field < kind_.fields.size(); ++field) {
            if (row.values[field] == held.values[field]) continue;
            const Field& described = kind_.fields[field];
            differs += fmt::format("{}{}: the book has {}, the folder {}", differs.empty() ? "" : "; ",
                                   described.name, board_.shown(described, held.values[field]),
                                   board_.shown(described, row.values[field]));
        }
        board_.ids[table_][i] = held.id;
        if (differs.empty() || row.at_fault || json_at_fault_) return;
        refuse(
            {"other-values", where(given_.file, row),
             fmt::format("the {} {} is in the book with other values: {}", kind_.name, name_of(row), differs),
             "correct the folder, or change the book by hand"});
    }

    [[nodiscard]] std::string name_of(const GivenRow& row) const {
        return kind_.label.empty() ? ""
                                   : board_.shown(kind_.field(kind_.label.front()),
                                                  value_of(kind_, row.values, kind_.label.front()));
    }
    void refuse(Refusal refusal) { board_.complaints.refuse(given_.file, std::move(refusal)); }

    MatchBoard& board_;
    std::size_t table_;
    GivenTable& given_;
    const Kind& kind_;
    KindShelf& shelf_;
    bool json_at_fault_;  ///< which rows are at fault is not told apart there
    std::unordered_map<std::string, std::size_t> first_by_key_;
    std::unordered_map<std::string, std::vector<Id>> unlabelled_;
};

}  // namespace

namespace {

/// What rows say of each other by name, not by reference; any table may be named, so this comes last.
void check_names(MatchBoard& board) {
    const GivenTable& conditions = board.contents.table("condition");
    for (const GivenRow& row : conditions.rows)
        check_names_in_condition(board, conditions, row);
    const GivenTable& openings = board.contents.table("opening");
    for (const GivenRow& row : openings.rows)
        check_opening(board, openings, row);
}

}  // namespace

void match_rows(MatchBoard& board) {
    for (std::size_t table = 0; table < board.shelves.size(); ++table) {
        if (board.contents.tables[table].rows.empty()) continue;
        const std::string& kind = board.shelves[table].kind().name;
        if (kind == "track") {
            match_tracks(board, table);
        } else if (kind == "logger_file") {
            match_logger_files(board, table);
        } else {
            if (kind == "survey") fill_survey_digests(board, table);
            if (kind == "duty_done") note_missing_evidence(board, table);
            TableMatching(board, table).match();
        }
    }
    check_names(board);
}

}  // namespace spoilbook
