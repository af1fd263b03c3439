// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "model/folder/complaints.h"
#include "model/folder/given.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// Reads a CSV file into `table` by the description of its kind: columns by name in any order, any may be
/// absent; times without an offset in `zone`. Refused beside what read_csv and parse_field refuse: an unknown
/// column with the nearest known name, a column without a name or given twice.
void read_table(std::string_view bytes, const Zone& zone, GivenTable& table, Complaints& complaints);

}  // namespace spoilbook
