// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "model/folder/complaints.h"
#include "model/folder/given.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// harbour.json: one object. Its campaigns are a list of {name, from, to}; times without an offset in its own
/// zone. A zone that the machine's zone database does not hold is refused.
void read_harbour(std::string_view bytes, FolderContents& contents, Complaints& complaints);

/// The zone of the harbour just read; nothing where it gives none or an unknown one.
std::optional<Zone> zone_of_harbour(const FolderContents& contents);

/// plant.json: {dredgers[] {…, buckets[]}, tugs[], barges[]}. Beside what Field checks: the rows of a table
/// have their numbers, within the units' ranges (ullage 0 to 50 m, draught 0 to 30 m); a table that does not
/// run one way is noted.
void read_plant(std::string_view bytes, const Zone& zone, FolderContents& contents, Complaints& complaints);

/// consents.json: {consents[] {…, conditions[]}}. What is no field of a condition is checked by its kind and
/// kept in `body`, canonical.
void read_consents(std::string_view bytes, const Zone& zone, FolderContents& contents,
                   Complaints& complaints);

}  // namespace spoilbook
