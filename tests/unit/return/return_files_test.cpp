// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/return_files.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

#include "tests/support/temp_folder.h"

using namespace spoilbook;
using namespace spoilbook::tests;
namespace fs = std::filesystem;

namespace {

const std::map<std::string, std::string> two{{"return.json", "{}"}, {"trips.csv", "trip\r\n"}};

std::size_t files_in(const fs::path& folder) {
    return std::size_t(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

}  // namespace

TEST_CASE("a return lands whole in a new folder, in an empty one, and in one below a new one", "[return]") {
    const TempFolder folder;
    fs::create_directory(folder.file("empty"));
    for (const char* name : {"new", "empty", "year/2025-11", "slash/"}) {
        CAPTURE(name);
        REQUIRE(write_return_folder(folder.file(name), two));
        CHECK(files_in(folder.file(name)) == 2);
        CHECK(fs::file_size(folder.file(name) + "/return.json") == 2);
    }
    CHECK(files_in(folder.path()) == 4);
}

TEST_CASE("a folder of a person's own beside a return stays, whatever its name", "[return]") {
    const TempFolder folder;
    fs::create_directory(folder.file("november-part"));
    std::ofstream(folder.file("november-part/letter.txt")) << "mine";
    REQUIRE(write_return_folder(folder.file("november"), two));
    CHECK(fs::file_size(folder.file("november-part/letter.txt")) == 4);
}

TEST_CASE("a return never writes over another, and leaves nothing where it cannot be written", "[return]") {
    const TempFolder folder;
    REQUIRE(write_return_folder(folder.file("november"), two));
    const auto again = write_return_folder(folder.file("november"), {{"return.json", "other"}});
    REQUIRE_FALSE(again);
    CHECK(again.refusals().front().code == "not-empty");
    CHECK(fs::file_size(folder.file("november/return.json")) == 2);
    std::ofstream(folder.file("a file")) << "mine";
    const auto below = write_return_folder(folder.file("a file/return"), two);
    REQUIRE_FALSE(below);
    CHECK(below.refusals().front().code == "cannot-write");
    CHECK(files_in(folder.path()) == 2);
}
