// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/trip_tracks.h"
#include "model/book/book.h"
#include "model/consent/ledger.h"

namespace spoilbook {

/// One time at which a condition that is tried would have been passed.
struct TrialPass {
    Instant at;                   ///< the release's end, the reading, the survey, or when a duty was due
    std::string what;             ///< trip and release, load, site, claim and survey, or the period of a duty
    std::string load;             ///< of that release; blank: none
    std::string member;           ///< of a limit for each cell, claim, …; blank: none
    std::optional<double> value;  ///< used at that instant, peak, wave height, share: in the condition's unit
    std::optional<double> level;  ///< what it was held against
    std::string why;              ///< in words
};

/// How a condition would have done over a time that has passed.
struct Trial {
    std::string why_not;            ///< not empty: this condition cannot be tried, and why
    std::size_t looked_at = 0;      ///< releases, loads, events, periods or surveys that it was held against
    std::string of;                 ///< what was counted: "releases", …
    std::size_t cannot_tell = 0;    ///< of them: it could not be told
    std::string untold;             ///< why not, of the first of them that has a reason; blank: none has
    bool floor = false;             ///< an at_least: `times` is how often it was missed
    std::size_t times = 0;          ///< how often it was passed: releases in a row over one limit are once
    std::vector<TrialPass> passes;  ///< ascending; each release at which a limit was over is one

    [[nodiscard]] std::optional<Instant> first() const {
        return passes.empty() ? std::nullopt : std::optional(passes.front().at);
    }
};

/// What a trial reads beside the ledger. Tracks may be null: what needs one cannot be told. Without a book
/// neither turbidity nor a surveyed grid is read.
struct TrialSources {
    TripTracks* tracks = nullptr;
    const Book* book = nullptr;
};

/// Holds a condition, whether it is in the book or only thought of, against what happened in [from, to], as
/// if it had been in force all that time: its own from and to are not heeded. Evaluated as the condition's
/// kind is after the act, with the factors in force in the book. Windows reach back before `from` for what
/// they count. Surface, watch, record and text cannot be tried yet. Pure but for what it reads from the
/// book.
Trial try_condition(const Ledger& ledger, const Condition& candidate, Instant from, Instant to,
                    const TrialSources& sources = {});

}  // namespace spoilbook
