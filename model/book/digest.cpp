// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/digest.h"

#include <sodium.h>

#include "model/book/book_error.h"

namespace spoilbook {

namespace {

std::string little_endian(std::uint64_t value) {
    std::string bytes(8, '\0');
    for (std::size_t i = 0; i < 8; ++i)
        bytes[i] = static_cast<char>(static_cast<unsigned char>(value >> (8 * i)));
    return bytes;
}

}  // namespace

std::string sha256(std::string_view bytes) {
    if (sodium_init() < 0) throw BookError("the cryptographic library does not start");
    std::string hash(crypto_hash_sha256_BYTES, '\0');
    crypto_hash_sha256(reinterpret_cast<unsigned char*>(hash.data()),
                       reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    return hash;
}

std::string hex_text(std::string_view bytes) {
    static constexpr char digits[] = "0123456789abcdef";
    std::string text;
    text.reserve(bytes.size() * 2);
    for (const char c : bytes) {
        const auto byte = static_cast<unsigned char>(c);
        text += digits[byte >> 4];
        text += digits[byte & 15];
    }
    return text;
}

HashParts& HashParts::text(std::string_view part) {
    bytes_ += little_endian(part.size());
    bytes_ += part;
    return *this;
}

HashParts& HashParts::number(std::int64_t part) {
    return text(little_endian(static_cast<std::uint64_t>(part)));
}

std::string HashParts::sha256() const {
    return spoilbook::sha256(bytes_);
}

}  // namespace spoilbook
