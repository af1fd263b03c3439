// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/season_notes.h"

namespace spoilbook {

void note_season(MatchBoard&) {}

}  // namespace spoilbook
