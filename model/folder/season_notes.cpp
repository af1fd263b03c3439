// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/season_notes.h"

#include "model/folder/season_view.h"

namespace spoilbook {

void note_season(MatchBoard& board) {
    const SeasonView season(board);
    NoteDown notes;
    note_overlaps(season, notes);
    note_shifts(season, notes);
    note_loads(season, notes);
    note_trips(season, notes);
    note_tracks(board, season, notes);
    note_surveys(board, notes);
    note_places(board, season, notes);
    note_names(board, season, notes);
    for (Note& note : notes)
        board.complaints.note(std::move(note.where), std::move(note.what));
}

}  // namespace spoilbook
