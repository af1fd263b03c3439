// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/stored_file.h"

#include <zstd.h>

#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/inside.h"

namespace spoilbook {

namespace {

std::string packed(std::string_view bytes) {
    std::string out(ZSTD_compressBound(bytes.size()), '\0');
    const auto size = ZSTD_compress(out.data(), out.size(), bytes.data(), bytes.size(), 3);
    if (ZSTD_isError(size) != 0) throw BookError("a file cannot be packed");
    out.resize(size);
    return out;
}

std::string unpacked(const void* bytes, std::size_t size) {
    std::string out(chunk_bytes, '\0');
    const auto got = ZSTD_decompress(out.data(), out.size(), bytes, size);
    if (ZSTD_isError(got) != 0) throw BookError("a stored file is damaged");
    out.resize(got);
    return out;
}

}  // namespace

Checked<std::string> store_file(const Book& book, const std::string& bytes) {
    if (bytes.size() > largest_file_bytes) {
        return Refusal{"file-too-large", "", "the file is over 1 GB", "cut it into smaller ones"};
    }
    const std::string digest = hex_text(sha256(bytes));
    auto& db = *book.inside().db;
    SQLite::Statement known(db, "SELECT 1 FROM stored_file WHERE digest = ?");
    known.bind(1, digest);
    if (known.executeStep()) return digest;
    const std::size_t chunks = (bytes.size() + chunk_bytes - 1) / chunk_bytes;
    SQLite::Statement file(db, "INSERT INTO stored_file (digest, bytes, chunks) VALUES (?, ?, ?)");
    file.bind(1, digest);
    file.bind(2, static_cast<std::int64_t>(bytes.size()));
    file.bind(3, static_cast<std::int64_t>(chunks));
    file.exec();
    SQLite::Statement chunk(db, "INSERT INTO stored_chunk (digest, n, packed) VALUES (?, ?, ?)");
    for (std::size_t n = 0; n < chunks; ++n) {
        const std::string pack = packed(std::string_view(bytes).substr(n * chunk_bytes, chunk_bytes));
        chunk.reset();
        chunk.bind(1, digest);
        chunk.bind(2, static_cast<std::int64_t>(n));
        chunk.bind(3, pack.data(), static_cast<int>(pack.size()));
        chunk.exec();
    }
    return digest;
}

std::optional<std::string> load_file(const Book& book, const std::string& digest) {
    auto& db = *book.inside().db;
    SQLite::Statement file(db, "SELECT bytes, chunks FROM stored_file WHERE digest = ?");
    file.bind(1, digest);
    if (!file.executeStep()) return std::nullopt;
    const auto broken = [&](const char* what) { return BookError("stored file " + digest + ": " + what); };
    std::string bytes;
    std::int64_t chunks = 0;
    SQLite::Statement chunk(db, "SELECT n, packed FROM stored_chunk WHERE digest = ? ORDER BY n");
    chunk.bind(1, digest);
    while (chunk.executeStep()) {
        if (chunk.getColumn(0).getInt64() != chunks++) throw broken("a chunk is missing");
        const auto column = chunk.getColumn(1);
        bytes += unpacked(column.getBlob(), static_cast<std::size_t>(column.getBytes()));
        if (bytes.size() > largest_file_bytes) throw broken("it is larger than any that was stored");
    }
    if (chunks != file.getColumn(1).getInt64()) throw broken("a chunk is missing or was added");
    if (static_cast<std::int64_t>(bytes.size()) != file.getColumn(0).getInt64() ||
        hex_text(sha256(bytes)) != digest) {
        throw broken("its bytes do not fit its digest");
    }
    return bytes;
}

}  // namespace spoilbook
