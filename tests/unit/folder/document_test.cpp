// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <regex>
#include <set>

#include "model/folder/document.h"
#include "tests/unit/folder/folder_support.h"

using namespace spoilbook;
using namespace spoilbook::test;

namespace {

const std::string root = SPOILBOOK_SOURCE_DIR;

/// Codes of refusals in the sources of the room: a hyphenated or known word in quotes right behind a brace or
/// the call that refuses.
std::set<std::string> codes_in_sources() {
    std::set<std::string> codes;
    const std::regex form(
        R"re((?:refuse\(|Refusal\{|, \{|[^a-z]\{)\s*"([a-z0-9]+(?:-[a-z0-9]+)*)",\s*(?:where|at|path|file|name|shown|"|fmt|line|member|row|to|place))re");
    const std::set<std::string> single{"twice",     "crs",       "path",    "geometry",
                                       "backwards", "ambiguous", "quoting", "digest"};
    for (const auto& entry : std::filesystem::directory_iterator(root + "/model/folder")) {
        const std::string text = text_of_file(entry.path().string());
        for (std::sregex_iterator it(text.begin(), text.end(), form), end; it != end; ++it) {
            const std::string code = (*it)[1];
            if (code.find('-') != std::string::npos || single.contains(code)) codes.insert(code);
        }
    }
    return codes;
}

}  // namespace

TEST_CASE("the description of a book folder is what the readers follow", "[folder]") {
    const std::string committed = text_of_file(root + "/docs/book-folder.md");
    const bool up_to_date = committed == book_folder_document();
    if (!up_to_date) {
        const std::string to = SPOILBOOK_BIN_DIR "/book-folder.md";
        std::filesystem::create_directories(SPOILBOOK_BIN_DIR);
        std::ofstream(to, std::ios::binary) << book_folder_document();
        WARN("docs/book-folder.md is not what the program says; that is in " + to);
    }
    CHECK(up_to_date);
}

TEST_CASE("every code that a folder is refused with is explained", "[folder]") {
    const std::string errors = text_of_file(root + "/docs/errors.md");
    const auto codes = codes_in_sources();
    CHECK(codes.size() > 30);
    for (const std::string& code : codes) {
        INFO(code);
        CHECK(errors.find("| " + code + " |") != std::string::npos);
    }
}
