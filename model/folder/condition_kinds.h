// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/folder/object_shape.h"

namespace spoilbook {

/// The members of each kind of condition (consent rules): quantity, place, time, series, surface, duty,
/// watch, record, text. An unknown kind has none.
ObjectShape members_of_kind(const std::string& kind);

/// The members of the kind series alone.
ObjectShape series_members();

/// {sites: all, same or a list, held_hours}: when an event may be closed.
const ObjectShape& all_clear_shape();

/// {kind, …} of a quantity: over which time it is counted.
const ObjectShape& window_shape();

/// {n, unit, after}: by when a duty must be done.
const ObjectShape& due_shape();

/// What a statistic is held against: exactly one of absolute, above_control, times_control, higher_of, bands,
/// baseline, paired_above_control.
const ObjectShape& compare_shape();

}  // namespace spoilbook
