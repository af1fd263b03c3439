// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <unordered_map>

#include "model/book/book.h"

namespace spoilbook {

/// Of each row of a kind that is not struck out, which of its fields hold something, in the order of the
/// kind's fields. The values themselves are not read.
std::unordered_map<Id, std::vector<bool>> held_values(const Book& book, const Kind& kind);

}  // namespace spoilbook
