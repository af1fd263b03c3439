// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/stored_file.h"

#include <algorithm>

#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/inside.h"

namespace spoilbook {

std::string store_file(const Book& book, const PackedFile& file) {
    auto& db = *book.inside().db;
    SQLite::Statement known(db, "SELECT 1 FROM stored_file WHERE digest = ?");
    known.bind(1, file.digest());
    if (known.executeStep()) return file.digest();
    SQLite::Statement row(db, "INSERT INTO stored_file (digest, bytes, chunks) VALUES (?, ?, ?)");
    row.bind(1, file.digest());
    row.bind(2, static_cast<std::int64_t>(file.size()));
    row.bind(3, static_cast<std::int64_t>(file.chunks()));
    row.exec();
    SQLite::Statement chunk(db, "INSERT INTO stored_chunk (digest, n, packed) VALUES (?, ?, ?)");
    for (std::size_t n = 0; n < file.chunks(); ++n) {
        const std::string pack = file.pack(n);
        chunk.reset();
        chunk.bind(1, file.digest());
        chunk.bind(2, static_cast<std::int64_t>(n));
        chunk.bind(3, pack.data(), static_cast<int>(pack.size()));
        chunk.exec();
    }
    return file.digest();
}

namespace {

std::string_view blob(const SQLite::Column& column) {
    return {static_cast<const char*>(column.getBlob()), static_cast<std::size_t>(column.getBytes())};
}

}  // namespace

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
        bytes += unpacked_chunk(blob(column));
        if (bytes.size() > largest_kept_bytes) throw broken("it is larger than any that was stored");
    }
    if (chunks != file.getColumn(1).getInt64()) throw broken("a chunk is missing or was added");
    if (static_cast<std::int64_t>(bytes.size()) != file.getColumn(0).getInt64() ||
        hex_text(sha256(bytes)) != digest) {
        throw broken("its bytes do not fit its digest");
    }
    return bytes;
}

namespace {

class StoredBytes : public ChunkedBytes {
 public:
    StoredBytes(const Book& book, std::string digest, std::uint64_t size)
        : ChunkedBytes(size), book_(book), digest_(std::move(digest)) {}

 private:
    [[nodiscard]] std::string chunk(std::size_t n) const override {
        return read_from(book_, [&] { return read_chunk(n); });
    }

    [[nodiscard]] std::string read_chunk(std::size_t n) const {
        const auto broken = [&](const char* what) {
            return BookError("stored file " + digest_ + ": " + what);
        };
        auto& rows = book_.inside().prepared("SELECT packed FROM stored_chunk WHERE digest = ? AND n = ?");
        rows.bind(1, digest_);
        rows.bind(2, static_cast<std::int64_t>(n));
        if (!rows.executeStep()) throw broken("a chunk is missing");
        std::string chunk = unpacked_chunk(blob(rows.getColumn(0)));
        rows.reset();
        if (chunk.size() != std::min<std::uint64_t>(chunk_bytes, size() - n * chunk_bytes))
            throw broken("its bytes do not fit its digest");
        hold_against_digest(n, chunk, broken);
        return chunk;
    }

    template <class Broken>
    void hold_against_digest(std::size_t n, const std::string& chunk, const Broken& broken) const {
        if (n == 0) {
            hash_.emplace();
            hashed_ = 0;
        }
        if (!hash_ || n != hashed_) return;
        hash_->add(chunk);
        if (++hashed_ * chunk_bytes < size()) return;
        if (hex_text(hash_->hash()) != digest_) throw broken("its bytes do not fit its digest");
        hash_.reset();
    }

    const Book& book_;
    std::string digest_;
    mutable std::optional<Sha256> hash_;
    mutable std::size_t hashed_ = 0;  ///< chunks, from the first
};

}  // namespace

std::unique_ptr<ByteSource> stored_bytes(const Book& book, const std::string& digest) {
    auto& file = book.inside().prepared("SELECT bytes FROM stored_file WHERE digest = ?");
    file.bind(1, digest);
    if (!file.executeStep()) return nullptr;
    const auto size = static_cast<std::uint64_t>(file.getColumn(0).getInt64());
    file.reset();
    return std::make_unique<StoredBytes>(book, digest, size);
}

}  // namespace spoilbook
