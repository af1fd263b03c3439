// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <set>

#include "model/book/digest.h"
#include "model/book/new_id.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

TEST_CASE("SHA-256 gives the digests that its standard publishes") {
    // FIPS 180-4's example messages, as NIST's example file and the FIPS text give them (MEM).
    CHECK(hex_text(sha256("abc")) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    CHECK(hex_text(sha256("")) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    CHECK(hex_text(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")) ==
          "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    CHECK(hex_text(sha256(std::string(1'000'000, 'a'))) ==
          "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("parts are hashed with their lengths, so that moving a border changes the hash") {
    CHECK(HashParts().text("ab").text("c").sha256() != HashParts().text("a").text("bc").sha256());
    CHECK(HashParts().text("a").text("").sha256() != HashParts().text("a").sha256());
    // Length 1 as 8 bytes, least first, then the byte.
    CHECK(HashParts().text("a").sha256() == sha256(std::string("\x01\0\0\0\0\0\0\0a", 9)));
    CHECK(HashParts().number(-2).sha256() ==
          sha256(std::string("\x08\0\0\0\0\0\0\0\xFE\xFF\xFF\xFF\xFF\xFF\xFF\xFF", 16)));
}

TEST_CASE("a new id is a UUID of version 7 with the time in its first 48 bits") {
    // RFC 9562, 5.7 and 4.1: unix_ts_ms, ver 0111, var 10 (MEM); its example's time is 0x017F22E279B0.
    const Id id = new_id({0x017F22E279B0, 5, "wheelhouse", 1, 0});
    CHECK(hex(id).substr(0, 12) == "017f22e279b0");
    CHECK(id.bytes[6] >> 4 == 7);
    CHECK(id.bytes[8] >> 6 == 2);
}

TEST_CASE("ids sort in the order of time, then entry, then row") {
    std::vector<Id> ids;
    for (const std::int64_t ms : {1740981600000, 1740981600001})
        for (const std::int64_t count : {0, 1, 4095})
            for (const std::int64_t n : {0, 1, 255, 256, 16'777'215})
                ids.push_back(new_id({ms, count, "wheelhouse", ms, n}));
    CHECK(std::is_sorted(ids.begin(), ids.end()));
    CHECK(std::set<Id>(ids.begin(), ids.end()).size() == ids.size());
}

TEST_CASE("two devices that write in the same millisecond give different ids") {
    const Id a = new_id({1740981600000, 0, "wheelhouse", 1, 0});
    const Id b = new_id({1740981600000, 0, "office", 1, 0});
    CHECK(a != b);
    CHECK(a == new_id({1740981600000, 0, "wheelhouse", 1, 0}));
}

TEST_CASE("rows of one change and of the next all have ids of their own, in order") {
    auto book = Book::in_memory("wheelhouse");
    std::vector<Id> ids;
    for (int i = 0; i < 3; ++i) {
        book.change(by("Ana"),
                    [&](Change& change) -> Checked<Done> {
                        for (int row = 0; row < 100; ++row)
                            ids.push_back(change.insert(kind("tug"), values_of(kind("tug"), {})));
                        return Done{};
                    })
            .value();
    }
    CHECK(std::is_sorted(ids.begin(), ids.end()));
    CHECK(std::set<Id>(ids.begin(), ids.end()).size() == 300);
}
