// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <string>

#include "model/unit/byte_source.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// The largest file that is kept in a book, or read as a table; and the largest that is read as JSON.
inline constexpr std::uint64_t largest_file_bytes = 1'000'000'000;
inline constexpr std::uint64_t largest_json_bytes = 256'000'000;

/// The bytes of a regular file. Refused, with `name` as the place: a link, a folder, a pipe or a device
/// ("not-a-file"), a file over `most` bytes ("too-large"), one that cannot be read ("unreadable").
Checked<std::string> read_regular_file(const std::string& path, const std::string& name, std::uint64_t most);

/// The same file, read piece by piece from disk for as long as the answer lives. It keeps the size that it
/// had when it was opened.
Checked<std::unique_ptr<ByteSource>> open_regular_file(const std::string& path, const std::string& name,
                                                       std::uint64_t most);

/// True for a name that stays in its folder: no slash or backslash, no leading point, not empty, no control
/// characters.
bool is_plain_name(const std::string& name);

}  // namespace spoilbook
