// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/record/kind.h"
#include "model/unit/refusal.h"

namespace spoilbook {

/// Why this value of one field cannot be written by hand, though it parses: a zone that is none would make
/// the whole book unreadable; outlines, conditions, the map's reference system and kept files are checked
/// against each other only where a book folder is read, so they come with one. Nothing where it may be
/// written.
std::optional<Refusal> why_not_by_hand(const Kind& kind, const Field& field, const Value& value);

}  // namespace spoilbook
