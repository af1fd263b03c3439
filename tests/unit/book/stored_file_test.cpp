// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/stored_file.h"

#include <catch2/catch.hpp>

#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/material_bytes.h"
#include "tests/support/full_book.h"
#include "tests/support/raw_book.h"
#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

std::string keep(Book& book, const std::string& bytes) {
    std::string digest;
    book.change(by("Ana"),
                [&](Change& change) -> Checked<Done> {
                    digest = change.keep(bytes).value();
                    return Done{};
                })
        .value();
    return digest;
}

}  // namespace

TEST_CASE("a file comes out of the book as it went in, whatever its size") {
    auto book = Book::in_memory("office");
    for (const std::size_t size : {std::size_t{0}, std::size_t{1}, chunk_bytes - 1, chunk_bytes,
                                   chunk_bytes + 1, 3 * chunk_bytes + 17}) {
        CAPTURE(size);
        const auto bytes = unlike_itself(size);
        const auto digest = keep(book, bytes);
        CHECK(digest == hex_text(sha256(bytes)));
        CHECK(book.material(digest) == bytes);
    }
    CHECK_FALSE(check_journal(book));
    CHECK_FALSE(book.material(std::string(64, '0')));
}

TEST_CASE("the same file taken in twice is stored once, and both entries name it") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto book = Book::create(path, "office");
    const auto first = keep(*book, unlike_itself(100));
    CHECK(keep(*book, unlike_itself(100)) == first);
    for (const std::int64_t seq : {1, 2})
        CHECK(find_entry(*book, {"office", seq})->materials == std::vector<std::string>{first});
    CHECK(RawBook(path).ask_one("SELECT count(*) FROM stored_file") == "1");
    CHECK_FALSE(check_journal(*book));
}

TEST_CASE("a file of an import that is refused is not stored") {
    auto book = Book::in_memory("office");
    std::string digest;
    CHECK_FALSE(book.change(by("Ana"), [&](Change& change) -> Checked<Done> {
        digest = change.keep("a track").value();
        return Refusal{"bad-row", "x", "y", "z"};
    }));
    CHECK_FALSE(book.material(digest));
}

TEST_CASE("a stored file that was changed from outside is not given out") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto book = Book::create(path, "office");
    const auto digest = keep(*book, unlike_itself(2 * chunk_bytes));
    RawBook(path).run("DELETE FROM stored_chunk WHERE n = 1");
    CHECK_THROWS_AS(book->material(digest), BookError);
}

TEST_CASE("text packs to a fraction of its size") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    auto book = Book::create(path, "office");
    std::string readings;
    for (int i = 0; i < 50000; ++i)
        readings += "2025-03-03T06:" + std::to_string(i % 60) + ":00Z,12." + std::to_string(i % 10) + "\n";
    keep(*book, readings);
    const auto packed = std::stoul(RawBook(path).ask_one("SELECT sum(length(packed)) FROM stored_chunk"));
    CHECK(packed < readings.size() / 4);
}

namespace {

/// Bytes that somebody writes while they are read: others from the third reading on, or cut short.
class Restless : public ByteSource {
 public:
    explicit Restless(std::size_t size, std::size_t cut = 0) : size_(size), cut_(cut) {}
    [[nodiscard]] std::uint64_t size() const override { return size_; }
    [[nodiscard]] std::string piece(std::uint64_t from, std::size_t most) const override {
        const char letter = cut_ == 0 && ++reads_ > 2 ? 'b' : 'a';
        const std::uint64_t end = size_ - cut_;
        return std::string(from < end ? std::min<std::uint64_t>(most, end - from) : 0, letter);
    }

 private:
    std::uint64_t size_, cut_;
    mutable int reads_ = 0;
};

}  // namespace

TEST_CASE("a file is read out piece by piece, wherever the pieces begin") {
    auto book = Book::in_memory("office");
    const auto bytes = unlike_itself(3 * chunk_bytes + 17);
    const auto digest = keep(book, bytes);
    const auto source = material_bytes(book, digest);
    REQUIRE(source != nullptr);
    CHECK(source->size() == bytes.size());
    for (const std::size_t from :
         {std::size_t{0}, chunk_bytes - 3, chunk_bytes, 3 * chunk_bytes + 16, bytes.size()}) {
        for (const std::size_t most : {std::size_t{1}, std::size_t{5}, chunk_bytes + 1, 9 * chunk_bytes})
            CHECK(source->piece(from, most) == bytes.substr(from, most));
    }
    CHECK(digest_of(*source) == digest);
    CHECK(material_bytes(book, std::string(64, '0')) == nullptr);
}

TEST_CASE("a file read out piece by piece is held against its digest") {
    const TempFolder folder;
    const auto path = folder.file("marram.sbook");
    std::string one, two;
    {
        auto book = Book::create(path, "office");
        one = keep(*book, std::string(chunk_bytes + 9, 'a'));
        two = keep(*book, std::string(chunk_bytes + 9, 'b'));
    }
    RawBook(path).run("UPDATE stored_chunk SET packed = (SELECT packed FROM stored_chunk WHERE digest = '" +
                      two + "' AND n = 1) WHERE digest = '" + one + "' AND n = 1");
    const auto book = Book::open_to_read(path);
    const auto source = material_bytes(*book, one);
    CHECK_NOTHROW(source->piece(0, chunk_bytes));
    CHECK_THROWS_AS(digest_of(*source), BookError);
    CHECK(digest_of(*material_bytes(*book, two)) == two);
}

TEST_CASE("a file that changes while it is stored is refused whole") {
    auto book = Book::in_memory("office");
    const std::size_t size = chunk_bytes + chunk_bytes / 2;
    for (const std::size_t cut : {std::size_t{0}, std::size_t{1}, chunk_bytes / 2, chunk_bytes, size}) {
        CAPTURE(cut);
        const auto entry = book.change(by("Ana"), [&](Change& change) -> Checked<Done> {
            const auto digest = keep_bytes(change, Restless(size, cut));
            if (!digest) return digest.refusals();
            return Done{};
        });
        REQUIRE_FALSE(entry);
        CHECK(entry.refusals().front().code == "changed-meanwhile");
    }
    CHECK_FALSE(check_journal(book));
}

TEST_CASE("a packed file is what it was packed from, and is kept in any book without it") {
    const auto bytes = unlike_itself(2 * chunk_bytes + 5);
    auto held = std::make_unique<std::string>(bytes);
    const auto file = *PackedFile::of(HeldBytes(*held));
    held.reset();
    CHECK(file->size() == bytes.size());
    CHECK(file->digest() == hex_text(sha256(bytes)));
    CHECK(file->piece(chunk_bytes - 2, 7) == bytes.substr(chunk_bytes - 2, 7));
    CHECK(digest_of(*file) == file->digest());
    for (const char* device : {"office", "barge"}) {
        auto book = Book::in_memory(device);
        book.change(by("Ana"),
                    [&](Change& change) -> Checked<Done> {
                        CHECK(keep_packed(change, *file) == file->digest());
                        return Done{};
                    })
            .value();
        CHECK(book.material(file->digest()) == bytes);
        CHECK_FALSE(check_journal(book));
    }
}
