// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/record/season.h"

namespace spoilbook {

/// All that the book holds, as plain values. Throws BookError where a row does not read.
Season read_season(const Book& book);

/// The zone in which the book's days are cut; UTC while the book has no harbour yet.
Zone book_zone(const Book& book);

}  // namespace spoilbook
