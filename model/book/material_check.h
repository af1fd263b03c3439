// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/journal_check.h"

namespace spoilbook {

/// The first stored file that is not as the journal's entries say: missing, added, or with other bytes than
/// its digest tells. A part of check_journal.
std::optional<FirstBad> bad_material(const Book& book);

}  // namespace spoilbook
