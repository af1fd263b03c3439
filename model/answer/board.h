// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "model/answer/trip_tracks.h"
#include "model/answer/turbidity.h"
#include "model/consent/duty_calendar.h"
#include "model/consent/finding.h"
#include "model/consent/limit.h"

namespace spoilbook {

/// How a condition stands (docs/words.md). A limit: within, warned, was over, below, over. A trigger: within,
/// over (an event is open), was over (one was, in the period). What is judged release by release: within (all
/// complied), breached. A duty: within, due, overdue. Any: cannot tell, nothing yet (nothing fell to it), not
/// judged (the program does not judge it: read it yourself).
enum class BoardState {
    within,
    warned,
    was_over,
    below,
    over,
    breached,
    due,
    overdue,
    cannot_tell,
    nothing_yet,
    not_judged
};

/// "was_over": the word with an underscore, as commands print it.
std::string_view text(BoardState state);

/// One condition and all that it says. Of members that its kind does not have, nothing.
struct BoardRow {
    const Condition* condition = nullptr;  ///< the version in force; of one that is not any more, the last
    const Consent* consent = nullptr;      ///< null where the condition names none
    bool in_force = true;
    bool reads = true;  ///< its members
    BoardState state = BoardState::nothing_yet;
    std::string why;            ///< for not judged, turbidity that cannot be told, no survey yet, in words
    std::string open_question;  ///< shown wherever its figure is shown
    std::string settled_by, settled_on, settled_letter;  ///< blank: not settled
    std::vector<LimitState> limits;                      ///< quantity: one a member
    std::vector<Finding> findings;      ///< floor, place, time, sea and wind, record, watch, surface: by time
    std::vector<TriggerState> sites;    ///< turbidity: how each site stands
    std::vector<TriggerRecord> events;  ///< turbidity: those that touch the period
    std::vector<DutyTime> duties;       ///< those that arose in the period or are open, and the next

    [[nodiscard]] std::size_t count(Compliance compliance) const;
};

/// Every condition of every consent that is in force at `at`, or that something of the period fell to.
/// Points into the ledger and its season, which must outlive it.
struct Board {
    Instant at;  ///< what the figures are true for: the as-at, or the period's last instant before it
    std::optional<Period> period;
    std::vector<BoardRow> rows;             ///< in the order of the book
    Refusals unread;                        ///< conditions whose members do not read
    std::unique_ptr<TurbidityWatch> water;  ///< which `sites` and `events` point into
};

/// One answer for the screen and for `sbk conditions`. What is judged event by event is judged over the whole
/// book, or a period [from, to); all else as at its end. Reads what the season does not have (watches, which
/// columns hold something, loggers) out of `book`.
Board board(const Book& book, const Ledger& ledger, TripTracks& tracks, Instant as_at,
            std::optional<Period> period = std::nullopt);

}  // namespace spoilbook
