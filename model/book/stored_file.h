// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"
#include "model/unit/byte_source.h"

namespace spoilbook {

/// Bulk that is never edited (logger files, tracks, grids, attached files): stored once, by its SHA-256, in
/// chunks of 1 MiB packed with zstd. The journal carries the digest only.
constexpr std::size_t chunk_bytes = std::size_t{1} << 20;
constexpr std::size_t largest_file_bytes = 1'000'000'000;

/// Stores bytes within the open transaction unless they are there already, chunk by chunk; answers the digest
/// (64 hexadecimal digits). Refused: over 1 GB, bytes that change while they are read.
Checked<std::string> store_file(const Book& book, const ByteSource& bytes);
/// The bytes as they came; nothing where there is no such file. Throws BookError where they do
/// not fit the digest.
std::optional<std::string> load_file(const Book& book, const std::string& digest);
/// The same bytes, chunk by chunk, for as long as the book lives; null where there is no such file. That they
/// fit the digest is held against it as often as they are read from the first to the last in order.
std::unique_ptr<ByteSource> stored_bytes(const Book& book, const std::string& digest);

}  // namespace spoilbook
