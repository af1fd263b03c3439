// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/replay.h"

namespace spoilbook {

/// The book as it is read at an as-at, both ends included: a copy in memory in which a row whose first
/// instant is later is struck out, and any later instant is blank. Times of the law and of factors (days, and
/// instants that may be a day) are no happenings and stay. `known` takes the journal up to a point first.
/// Throws BookError where an entry's hash is wrong.
Book happened_by(const Book& book, Instant as_at, const std::optional<KnownAt>& known = std::nullopt);

}  // namespace spoilbook
