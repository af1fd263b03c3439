// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "forms/shared/choice_field.h"
#include "model/book/book.h"
#include "model/record/season.h"

namespace spoilbook::form {

/// Whether what a reference names is a short list (claims, barges, cells), or typed by label (loads).
bool chosen_from_list(const Field& field);

/// What one column of a record may hold: its words, or the labels of what it refers to; cells only of the
/// ground that the record names, without exclusions. The first choice is "not recorded".
std::vector<Choice> choices_for(const Season& season, const Book& book, const Kind& kind, const Field& field,
                                const std::string& label);

/// The causes of delay in the reader's words; the key is the book's.
std::vector<Choice> delay_cause_choices();

}  // namespace spoilbook::form
