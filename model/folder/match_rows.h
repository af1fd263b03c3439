// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/folder/match_board.h"

namespace spoilbook {

/// Resolves every row of the folder and says what it is in the book: a row whose label the book has must have
/// the same values ("other-values", with both), a row without a label is held as often as the book has its
/// like. The same label twice in the folder is refused ("twice"). Fills board.ids.
void match_rows(MatchBoard& board);

}  // namespace spoilbook
