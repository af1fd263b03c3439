// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/folder/match_board.h"

namespace spoilbook {

/// Turns the labels in a row's references into ids: looked up in the folder, then in the book. A label that
/// is unique only within a parent is looked up in the row's own (a cell in the trip's ground, a bucket on the
/// shift's dredger); where the row names no parent it must be unique by itself, or be written PARENT/LABEL.
/// An unknown one ("unknown-reference") or one that may be several ("ambiguous") is refused and left blank.
/// The tables before it must have been resolved.
void resolve_references(MatchBoard& board, std::size_t table, std::size_t row);

/// The text that stands for a reference in a folder: the label, or PARENT/LABEL where the label alone would
/// not lead back. Nothing where the row referred to is not there (struck out).
std::optional<std::string> reference_text(MatchBoard& board, const Kind& of, const std::vector<Value>& values,
                                          const Field& field);

/// What a condition names in its body must be there: claims, grounds, cells and materials are refused where
/// they are not, sites and plant only noted, since they may come later.
void check_names_in_condition(MatchBoard& board, const GivenTable& table, const GivenRow& row);

/// opening.csv: the consent has a condition of that number, in any version.
void check_opening(MatchBoard& board, const GivenTable& table, const GivenRow& row);

}  // namespace spoilbook
