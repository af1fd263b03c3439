// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/return/return_facts.h"

namespace spoilbook {

/// return.json: everything the return says, keys in snake_case with units, amounts as printed
/// (docs/return.md).
std::string return_json(const ReturnFacts& facts);
/// trips.csv: the schedule, RFC 4180 with CR LF. A text that begins with = + - @ gets an apostrophe before
/// it, so that no spreadsheet runs it.
std::string trips_csv(const ReturnFacts& facts);

/// SHA256SUMS over the files, as `sha256sum -c` reads it; names ascending.
std::string sha256_sums(const std::map<std::string, std::string>& files);

/// Writes the files into a folder that is new or empty, whole or not at all.
Checked<Done> write_return_folder(const std::string& folder, const std::map<std::string, std::string>& files);

}  // namespace spoilbook
