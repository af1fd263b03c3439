// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/book/packed_file.h"

namespace spoilbook {

/// Bulk that is never edited (logger files, tracks, grids, attached files): stored once, by its SHA-256, in
/// packed chunks. The journal carries the digest only.

/// Stores a file within the open transaction unless it is there already; answers its digest.
std::string store_file(const Book& book, const PackedFile& file);
/// The bytes as they came; nothing where there is no such file. Throws BookError where they do
/// not fit the digest.
std::optional<std::string> load_file(const Book& book, const std::string& digest);
/// The same bytes, chunk by chunk, for as long as the book lives; null where there is no such file. That they
/// fit the digest is held against it as often as they are read from the first to the last in order.
std::unique_ptr<ByteSource> stored_bytes(const Book& book, const std::string& digest);

}  // namespace spoilbook
