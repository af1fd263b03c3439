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

struct Sha256::State {
    crypto_hash_sha256_state inside;
};

Sha256::Sha256() : state_(std::make_unique<State>()) {
    if (sodium_init() < 0) throw BookError("the cryptographic library does not start");
    crypto_hash_sha256_init(&state_->inside);
}

Sha256::~Sha256() = default;

void Sha256::add(std::string_view bytes) {
    crypto_hash_sha256_update(&state_->inside, reinterpret_cast<const unsigned char*>(bytes.data()),
                              bytes.size());
}

std::string Sha256::hash() {
    std::string hash(crypto_hash_sha256_BYTES, '\0');
    crypto_hash_sha256_final(&state_->inside, reinterpret_cast<unsigned char*>(hash.data()));
    return hash;
}

std::string sha256(std::string_view bytes) {
    Sha256 hash;
    hash.add(bytes);
    return hash.hash();
}

std::string digest_of(const ByteSource& bytes) {
    constexpr std::size_t piece_bytes = std::size_t{1} << 18;
    Sha256 hash;
    for (std::uint64_t from = 0; from < bytes.size(); from += piece_bytes)
        hash.add(bytes.piece(from, piece_bytes));
    return hex_text(hash.hash());
}

std::string hex_text(std::string_view bytes) {
    static constexpr std::string_view digits = "0123456789abcdef";
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
