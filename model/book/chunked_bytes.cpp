// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/chunked_bytes.h"

#include <zstd.h>

#include "model/book/book_error.h"

namespace spoilbook {

std::string packed_chunk(std::string_view bytes) {
    std::string out(ZSTD_compressBound(bytes.size()), '\0');
    const auto size = ZSTD_compress(out.data(), out.size(), bytes.data(), bytes.size(), 3);
    if (ZSTD_isError(size) != 0) throw BookError("a file cannot be packed");
    out.resize(size);
    return out;
}

std::string unpacked_chunk(std::string_view pack) {
    std::string out(chunk_bytes, '\0');
    const auto got = ZSTD_decompress(out.data(), out.size(), pack.data(), pack.size());
    if (ZSTD_isError(got) != 0) throw BookError("a stored file is damaged");
    out.resize(got);
    return out;
}

std::string ChunkedBytes::piece(std::uint64_t from, std::size_t most) const {
    std::string piece;
    while (piece.size() < most && from + piece.size() < size_) {
        const std::uint64_t at = from + piece.size();
        if (last_.empty() || at / chunk_bytes != n_) {
            last_ = chunk(at / chunk_bytes);
            n_ = at / chunk_bytes;
        }
        piece += std::string_view(last_).substr(at % chunk_bytes, most - piece.size());
    }
    return piece;
}

}  // namespace spoilbook
