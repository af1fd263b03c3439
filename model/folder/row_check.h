// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/folder/complaints.h"
#include "model/folder/given.h"

namespace spoilbook {

/// Checks one row by itself: its label stands where the kind asks for one ("blank-id"), and no end lies
/// before its own start ("backwards").
void check_row(const GivenTable& table, const GivenRow& row, Complaints& complaints);

/// check_row for every row of a table.
void check_rows(const GivenTable& table, Complaints& complaints);

}  // namespace spoilbook
