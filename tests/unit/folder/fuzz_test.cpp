// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <random>

#include "model/folder/given.h"
#include "model/folder/read_folder.h"
#include "tests/support/how_many.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

/// Spoils bytes as a bad disk, a bad editor or a bad person would.
class Spoiler {
 public:
    explicit Spoiler(unsigned seed) : random_(seed) {}

    std::string spoil(std::string bytes) {
        const int times = 1 + below(4);
        for (int i = 0; i < times; ++i)
            once(bytes);
        return bytes;
    }
    int below(std::size_t n) { return static_cast<int>(random_() % std::max<std::size_t>(n, 1)); }

 private:
    void once(std::string& bytes) {
        static const std::vector<std::string> pieces{"\"",
                                                     ",",
                                                     "\n",
                                                     "\r",
                                                     "{",
                                                     "}",
                                                     "[",
                                                     "]",
                                                     ":",
                                                     "null",
                                                     "-",
                                                     "1e308",
                                                     "1e999",
                                                     "NaN",
                                                     "\xFF",
                                                     "\xC0\xAF",
                                                     std::string(1, '\0'),
                                                     "\\u0000",
                                                     "9999999999999999999999",
                                                     "2025-09-28T02:30",
                                                     "T-0001",
                                                     "../",
                                                     "[[[[[[",
                                                     "\xEF\xBB\xBF",
                                                     "-0",
                                                     "0001-01-01T00:00Z",
                                                     "9999-12-31T23:59:59.999Z",
                                                     "+00:00"};
        const auto at = static_cast<std::size_t>(below(bytes.size() + 1));
        switch (below(6)) {
            case 0:
                if (at < bytes.size()) bytes[at] = static_cast<char>(below(256));
                return;
            case 1:
                bytes.resize(at);
                return;
            case 2:
                bytes.insert(at, pieces[static_cast<std::size_t>(below(pieces.size()))]);
                return;
            case 3:
                bytes.erase(at, static_cast<std::size_t>(below(20)));
                return;
            case 4:
                bytes.insert(at, bytes.substr(at, static_cast<std::size_t>(below(60))));
                return;
            default:
                swap_pieces(bytes, at);
        }
    }
    void swap_pieces(std::string& bytes, std::size_t at) {
        const auto other = static_cast<std::size_t>(below(bytes.size() + 1));
        const std::string a = bytes.substr(at, 12);
        bytes.insert(std::min(other, bytes.size()), a);
    }

    std::mt19937 random_;
};

}  // namespace

TEST_CASE("a spoiled folder is refused or read, and what is read goes out and comes back", "[folder]") {
    TempFolder folder;
    write_marram(folder);
    const auto sound = files_of(folder.path());
    std::vector<std::string> names;
    for (const auto& [name, bytes] : sound)
        names.push_back(name);
    Spoiler spoiler(20250804);
    std::size_t refused = 0;
    std::size_t read = 0;
    const auto rounds = static_cast<std::size_t>(tests::how_many(2000));
    for (std::size_t round = 0; round < rounds; ++round) {
        const std::string& name = names[static_cast<std::size_t>(spoiler.below(names.size()))];
        const std::string spoiled = spoiler.spoil(sound.at(name));
        folder.with(name, spoiled);
        INFO("round " << round << " file " << name << "\n" << spoiled);
        Book book = Book::in_memory("office");
        const auto outcome = import_folder(book, folder.path(), act_at_noon());
        if (!outcome) {
            ++refused;
            for (const Refusal& refusal : outcome.refusals())
                CHECK_FALSE((refusal.code.empty() || refusal.where.empty() || refusal.what.empty()));
            CHECK(book.rows(kind("harbour")).empty());
        } else if (++read % 20 == 0) {
            TempFolder out;
            REQUIRE(all_lines(export_folder(book, out.in("out")).refusals()) == "");
            Book again = Book::in_memory("office");
            REQUIRE(all_lines(import_folder(again, out.in("out"), act_at_noon()).refusals()) == "");
            REQUIRE(export_folder(again, out.in("again")).ok());
            REQUIRE(files_of(out.in("out")) == files_of(out.in("again")));
        }
        folder.with(name, sound.at(name));
    }
    CHECK(refused > rounds / 4);
    CHECK(read > rounds / 20);
}
