// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/change.h"

namespace spoilbook {

/// The one write path, which Book::change, undo and redo share: BEGIN, record, body, journal, COMMIT; all or
/// nothing. Answers the name of the (last) entry, or nothing where nothing was changed.
Checked<std::optional<EntryName>> write(Book& book, const Act& act,
                                        const std::function<Checked<Done>(OpenChange&)>& body);

}  // namespace spoilbook
