// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/book/book.h"

namespace spoilbook::test {

/// A book with some rows of every kind that needs no file, any value that its description allows; the same
/// for the same seed. References go anywhere, also to a bucket of another dredger.
Book any_book(unsigned seed);

/// The rows of a kind as text, ids replaced by labels with their parents', sorted.
std::vector<std::string> rows_by_name(const Book& book, const Kind& kind);

}  // namespace spoilbook::test
