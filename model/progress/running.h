// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/record/season.h"

namespace spoilbook {

/// What is going on by what is logged: the answer to every press of the barge desk. Null: there is none.
/// Points into the season that it was made from.
struct Running {
    const Shift* shift = nullptr;      ///< the newest without an end
    const Shift* last = nullptr;       ///< the newest of all: what the next one carries over
    const Station* station = nullptr;  ///< the newest with spuds down and not up
    const Load* load = nullptr;        ///< the newest that has not been cast off
    const Load* to_send = nullptr;     ///< the oldest full one that waits for its tow, else `load`
    const Trip* trip = nullptr;        ///< the oldest cast off and not alongside again
    const Delay* delay = nullptr;      ///< the newest that was started and not stopped, of the running shift
};

/// Logged rows only: no clock. Loads and trips of seasons past that were never closed do not count: they
/// must have begun after the start of the shift before the newest one.
Running running(const Season& season);

/// The releases of a trip that stand in rows of their own, in the order of the book.
std::vector<const Release*> release_rows(const Season& season, const Trip& trip);

/// Buckets counted into a load so far, part buckets with them.
double buckets_in(const Season& season, const Load& load);

}  // namespace spoilbook
