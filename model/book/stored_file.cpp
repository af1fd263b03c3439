// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/stored_file.h"

#include <zstd.h>

#include <algorithm>

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

Refusal changed_meanwhile() {
    return {"changed-meanwhile", "", "the file changed while it was read",
            "wait until nobody writes it any more"};
}

}  // namespace

Checked<std::string> store_file(const Book& book, const ByteSource& bytes) {
    if (bytes.size() > largest_file_bytes) {
        return Refusal{"file-too-large", "", "the file is over 1 GB", "cut it into smaller ones"};
    }
    const std::string digest = digest_of(bytes);
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
    Sha256 stored;
    for (std::size_t n = 0; n < chunks; ++n) {
        const std::string piece = bytes.piece(n * chunk_bytes, chunk_bytes);
        stored.add(piece);
        const std::string pack = packed(piece);
        chunk.reset();
        chunk.bind(1, digest);
        chunk.bind(2, static_cast<std::int64_t>(n));
        chunk.bind(3, pack.data(), static_cast<int>(pack.size()));
        chunk.exec();
    }
    if (hex_text(stored.hash()) != digest) return changed_meanwhile();
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

namespace {

class StoredBytes : public ByteSource {
 public:
    StoredBytes(const Book& book, std::string digest, std::uint64_t size)
        : book_(book), digest_(std::move(digest)), size_(size) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }

    [[nodiscard]] std::string piece(std::uint64_t from, std::size_t most) const override {
        std::string piece;
        while (piece.size() < most && from + piece.size() < size_) {
            const std::uint64_t at = from + piece.size();
            read_from(book_, [&] { take_chunk(at / chunk_bytes); });
            piece += std::string_view(chunk_).substr(at % chunk_bytes, most - piece.size());
        }
        return piece;
    }

 private:
    void take_chunk(std::uint64_t n) const {
        if (n == n_ && !chunk_.empty()) return;
        const auto broken = [&](const char* what) {
            return BookError("stored file " + digest_ + ": " + what);
        };
        auto& rows = book_.inside().prepared("SELECT packed FROM stored_chunk WHERE digest = ? AND n = ?");
        rows.bind(1, digest_);
        rows.bind(2, static_cast<std::int64_t>(n));
        if (!rows.executeStep()) throw broken("a chunk is missing");
        const auto column = rows.getColumn(0);
        chunk_ = unpacked(column.getBlob(), static_cast<std::size_t>(column.getBytes()));
        rows.reset();
        n_ = n;
        if (chunk_.size() != std::min<std::uint64_t>(chunk_bytes, size_ - n * chunk_bytes))
            throw broken("its bytes do not fit its digest");
        hold_against_digest(n, broken);
    }

    template <class Broken>
    void hold_against_digest(std::uint64_t n, const Broken& broken) const {
        if (n == 0) {
            hash_.emplace();
            hashed_ = 0;
        }
        if (!hash_ || n != hashed_) return;
        hash_->add(chunk_);
        if (++hashed_ * chunk_bytes < size_) return;
        if (hex_text(hash_->hash()) != digest_) throw broken("its bytes do not fit its digest");
        hash_.reset();
    }

    const Book& book_;
    std::string digest_;
    std::uint64_t size_;
    mutable std::string chunk_;    ///< the one read last
    mutable std::uint64_t n_ = 0;  ///< and which it is
    mutable std::optional<Sha256> hash_;
    mutable std::uint64_t hashed_ = 0;  ///< chunks, from the first
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
