// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/record/consent.h"

namespace spoilbook {

/// Names in a condition that the book does not have, as refusals whose `where` is "FILE member". Sites and
/// plant are not looked up: a consent may name what the book has not met yet.
Refusals unknown_names(const Book& book, const Condition& condition, const std::string& file);

/// Writes a condition that was read by condition_from, under its consent, as one entry: a number that the
/// consent does not have yet as its first version; else as a new version, `from` on, and the one before ends
/// there (an end that it has before that stays). No version is ever written over.
/// Refused: a consent that is not in the book, unknown_names, a new version without a `from`, without
/// act.why, or that does not begin after every other version.
Checked<Id> write_condition(Book& book, const Act& act, const Condition& condition);

}  // namespace spoilbook
