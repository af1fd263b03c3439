// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// Makes a whole new book or none: everything is written to a sibling of `path`, which takes the name only
/// when `fill` has succeeded. Refused where `path` exists.
Checked<Done> make_book(const std::string& path, const std::string& device,
                        const std::function<Checked<Done>(Book&)>& fill);

}  // namespace spoilbook
