// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/packed_file.h"

#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "model/book/book_error.h"
#include "model/book/digest.h"

namespace spoilbook {

namespace {

Refusal changed_meanwhile() {
    return {"changed-meanwhile", "", "the file changed while it was read",
            "wait until nobody writes it any more"};
}

Refusal no_room() {
    return {"cannot-write", "", std::string("a temporary file cannot be written: ") + std::strerror(errno),
            "make room where temporary files lie"};
}

}  // namespace

Checked<std::shared_ptr<const PackedFile>> PackedFile::of(const ByteSource& bytes) {
    if (bytes.size() > largest_kept_bytes)
        return Refusal{"file-too-large", "", "the file is over 1 GB", "cut it into smaller ones"};
    std::shared_ptr<PackedFile> made(new PackedFile(bytes.size()));
    made->file_.reset(std::tmpfile());
    if (!made->file_) return no_room();
    Sha256 hash;
    for (std::size_t n = 0; n < made->chunks(); ++n) {
        const std::string piece = bytes.piece(n * chunk_bytes, chunk_bytes);
        hash.add(piece);
        if (!made->add(packed_chunk(piece))) return no_room();
    }
    made->digest_ = hex_text(hash.hash());
    // Read again: neither a file that is being written nor a pack that does not unpack gets into a book.
    std::uint64_t seen = 0;
    for (std::size_t n = 0; n < made->chunks(); ++n) {
        const std::string piece = bytes.piece(n * chunk_bytes, chunk_bytes);
        if (piece != made->chunk(n)) return changed_meanwhile();
        seen += piece.size();
    }
    if (seen != bytes.size()) return changed_meanwhile();
    return std::shared_ptr<const PackedFile>(std::move(made));
}

bool PackedFile::add(const std::string& pack) {
    std::size_t done = 0;
    while (done < pack.size()) {
        const ssize_t put = ::write(::fileno(file_.get()), pack.data() + done, pack.size() - done);
        if (put < 0 && errno == EINTR) continue;
        if (put <= 0) return false;
        done += static_cast<std::size_t>(put);
    }
    ends_.push_back((ends_.empty() ? 0 : ends_.back()) + pack.size());
    return true;
}

std::string PackedFile::pack(std::size_t n) const {
    const std::uint64_t from = n == 0 ? 0 : ends_.at(n - 1);
    std::string pack(ends_.at(n) - from, '\0');
    std::size_t done = 0;
    while (done < pack.size()) {
        const ssize_t got = ::pread(::fileno(file_.get()), pack.data() + done, pack.size() - done,
                                    static_cast<off_t>(from + done));
        if (got < 0 && errno == EINTR) continue;
        if (got <= 0) throw BookError("a temporary file cannot be read");
        done += static_cast<std::size_t>(got);
    }
    return pack;
}

std::string PackedFile::chunk(std::size_t n) const {
    return unpacked_chunk(pack(n));
}

}  // namespace spoilbook
