// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace spoilbook {

/// The part of docs/book-folder.md that no description of a field says: the rules for every file.
std::string rules_words();

/// What is to be said of one kind beside its fields; empty where nothing is.
std::string kind_words(const std::string& kind);

}  // namespace spoilbook
