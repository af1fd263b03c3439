// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/book/book.h"

namespace spoilbook {

/// Why a row may not be given another name: conditions name it (a ground, a cell, a material, …), or amounts
/// and duties done name it (a condition), and would no longer find it. Nothing where nobody does.
std::optional<Refusal> why_not_renamed(const Book& book, const Kind& kind, const std::string& was);

}  // namespace spoilbook
