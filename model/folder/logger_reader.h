// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/folder/complaints.h"
#include "model/record/logger_reading.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// turbidity/SITE.csv: columns time, value in any order and no other. Refused: what read_csv refuses, a time
/// or a number that does not parse, a blank time. In the order of the file; a time that stands twice is
/// noted.
std::vector<LoggerReading> read_logger(std::string_view bytes, const Zone& zone, const std::string& file,
                                       Complaints& complaints);

}  // namespace spoilbook
