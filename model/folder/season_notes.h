// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/folder/match_board.h"

namespace spoilbook {

/// Notes what is odd in the rows that a folder brings, beside those that the book has: one line each, with
/// the place of the new row. REQUIRES every reference resolved.
void note_season(MatchBoard& board);

}  // namespace spoilbook
