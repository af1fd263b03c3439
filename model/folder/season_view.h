// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "model/folder/match_board.h"
#include "model/folder/planned_id.h"
#include "model/record/records.h"

namespace spoilbook {

/// One record of the book or the folder, as the notes look at it.
template <class R>
struct Seen {
    R record;
    std::optional<std::size_t> row;  ///< of its table in the folder, where it is new

    [[nodiscard]] bool fresh() const { return row.has_value(); }
};

/// All records of a kind, those of the book before the new ones of the folder.
template <class R>
class Sight {
 public:
    explicit Sight(const MatchBoard& board)
        : board_(board), table_(board.table_of(definition<R>().kind().name)) {
        const GivenTable& given = board.contents.tables[table_];
        records_.reserve(board.shelves[table_].held().size() + given.rows.size());
        for (const Row& row : board.shelves[table_].held())
            records_.push_back({definition<R>().read(row), std::nullopt});
        for (std::size_t i = 0; i < given.rows.size(); ++i) {
            if (!board.is_fresh(table_, i)) continue;
            records_.push_back({definition<R>().read({board.ids[table_][i], given.rows[i].values}), i});
            any_fresh_ = true;
        }
        for (std::size_t i = 0; i < records_.size(); ++i)
            places_.emplace(records_[i].record.id, i);
    }

    [[nodiscard]] const std::vector<Seen<R>>& all() const { return records_; }
    [[nodiscard]] bool any_fresh() const { return any_fresh_; }
    [[nodiscard]] const Seen<R>* find(const Id& id) const {
        const auto found = places_.find(id);
        return found == places_.end() ? nullptr : &records_[found->second];
    }
    /// "trips.csv line 4"; REQUIRES it fresh.
    [[nodiscard]] std::string place(const Seen<R>& seen) const {
        const GivenTable& given = board_.contents.tables[table_];
        return where(given.file, given.rows[*seen.row]);
    }

 private:
    const MatchBoard& board_;
    std::size_t table_;
    std::vector<Seen<R>> records_;
    std::unordered_map<Id, std::size_t> places_;
    bool any_fresh_ = false;
};

/// The kinds that several notes look at, read once.
struct SeasonView {
    explicit SeasonView(const MatchBoard& board)
        : shifts(board),
          stations(board),
          delays(board),
          loads(board),
          tallies(board),
          trips(board),
          releases(board),
          barges(board),
          buckets(board),
          materials(board),
          claims(board) {}

    Sight<Shift> shifts;
    Sight<Station> stations;
    Sight<Delay> delays;
    Sight<Load> loads;
    Sight<Tally> tallies;
    Sight<Trip> trips;
    Sight<Release> releases;
    Sight<Barge> barges;
    Sight<Bucket> buckets;
    Sight<Material> materials;
    Sight<Claim> claims;
};

/// Where a fresh record stands and what is odd there.
using NoteDown = std::vector<Note>;

/// Shifts of one dredger, her stations, delays of one shift, loads of one barge, trips of one tug that
/// overlap in time.
void note_overlaps(const SeasonView& season, NoteDown& notes);
/// A shift that is signed before it ended; one that its delays and its dredger's stations do not cover
/// to within 5 minutes, or whose delays reach beyond it;
/// causes of delay that are not on the list.
void note_shifts(const SeasonView& season, NoteDown& notes);
/// Loads over the barge's capacity, by what was stated, by ullage or by tally; dips outside her table.
void note_loads(const SeasonView& season, NoteDown& notes);
/// Trips that outlast the shift in which they cast off; shares of a trip's releases over 1.
void note_trips(const SeasonView& season, NoteDown& notes);
/// Tracks that came, of which no fix falls between the first and the last time of their trip.
void note_tracks(const MatchBoard& board, const SeasonView& season, NoteDown& notes);
/// Surveys that came with a file by which no condition can be judged: no grid, no day, no direction, no
/// uncertainty.
void note_surveys(const MatchBoard& board, NoteDown& notes);
/// Logged cells where the position is not; a map whose scale is off by over 0.05 % where the claims lie.
void note_places(const MatchBoard& board, const SeasonView& season, NoteDown& notes);
/// Names on shifts and trips that people.csv has not, one note a name; none where nobody is listed at all.
void note_names(const MatchBoard& board, const SeasonView& season, NoteDown& notes);

}  // namespace spoilbook
