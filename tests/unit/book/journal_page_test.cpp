// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <fstream>

#include "model/book/digest.h"
#include "model/book/journal.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

std::string bytes_of(const std::string& hexadecimal) {
    std::string bytes;
    for (std::size_t i = 0; i + 1 < hexadecimal.size(); i += 2)
        bytes += static_cast<char>(std::stoi(hexadecimal.substr(i, 2), nullptr, 16));
    return bytes;
}

/// What stands between ` and ` in a line.
std::string between_ticks(const std::string& line) {
    const auto from = line.find('`') + 1;
    return line.substr(from, line.find('`', from) - from);
}

struct Example {
    std::vector<std::string> names, parts;
    std::string hash, head;
};

/// The worked example of docs/journal.md.
Example example() {
    std::ifstream page(SPOILBOOK_SOURCE_DIR "/docs/journal.md");
    REQUIRE(page);
    Example found;
    bool inside = false;
    for (std::string line; std::getline(page, line);) {
        inside = inside || line == "### A worked example";
        if (!inside) continue;
        if (line.rfind("| ", 0) == 0 && line.find('`') != std::string::npos) {
            found.names.push_back(line.substr(2, line.find(" |") - 2));
            found.parts.push_back(bytes_of(between_ticks(line)));
        }
        if (line.rfind("- hash:", 0) == 0) found.hash = between_ticks(line);
        if (line.rfind("- head of the book:", 0) == 0) found.head = between_ticks(line);
    }
    return found;
}

}  // namespace

TEST_CASE("the worked example of the journal's page is what the program writes") {
    const auto page = example();
    REQUIRE(page.parts.size() == 14);
    std::string all;
    for (const auto& part : page.parts)
        all += part;
    CHECK(hex_text(sha256(all)) == page.hash);

    auto book = Book::in_memory("wheelhouse");
    log_row(book, by("Ana", 2), "tug", {{"name", "Kea"}});
    const auto entry = find_entry(book, {"wheelhouse", 1}).value();
    CHECK(hex_text(entry.hash) == page.hash);
    CHECK(journal_state(book).head == page.head);
    CHECK(page.names[10] == "changeset");
    CHECK(page.parts[10].substr(8) == entry.changeset);
}

TEST_CASE("every field of an entry is under its hash") {
    Entry entry;
    entry.name = {"wheelhouse", 2};
    entry.materials = {"a"};
    entry.seen = {{"office", 1}};
    const auto hash = hash_of(entry);
    const auto changed = [&](const auto& change) {
        Entry other = entry;
        change(other);
        return hash_of(other) != hash;
    };
    CHECK(changed([](Entry& e) { e.name.device = "tug"; }));
    CHECK(changed([](Entry& e) { e.name.seq = 3; }));
    CHECK(changed([](Entry& e) { e.at.utc_ms = 1; }));
    CHECK(changed([](Entry& e) { e.stamp_ms = 1; }));
    CHECK(changed([](Entry& e) { e.stamp_count = 1; }));
    CHECK(changed([](Entry& e) { e.who = "Ana"; }));
    CHECK(changed([](Entry& e) { e.why = "misread"; }));
    CHECK(changed([](Entry& e) { e.kind = EntryKind::sign; }));
    CHECK(changed([](Entry& e) { e.takes_back = 1; }));
    CHECK(changed([](Entry& e) { e.schema = 1; }));
    CHECK(changed([](Entry& e) { e.changeset = "T"; }));
    CHECK(changed([](Entry& e) { e.materials = {"a", "b"}; }));
    CHECK(changed([](Entry& e) { e.materials = {"b"}; }));
    CHECK(changed([](Entry& e) { e.seen = {{"office", 2}}; }));
    CHECK(changed([](Entry& e) { e.seen = {}; }));
    CHECK(changed([](Entry& e) { e.prev = "p"; }));
}

TEST_CASE("an entry's kind reads back, and no other text is one") {
    for (const auto kind : {EntryKind::change, EntryKind::undo, EntryKind::redo, EntryKind::import,
                            EntryKind::sign, EntryKind::correct, EntryKind::settle, EntryKind::upgrade})
        CHECK(kind_from_text(kind_text(kind)) == kind);
    CHECK_THROWS(kind_from_text("gift"));
    CHECK(name_text({"tug-1", 7}) == "tug-1:7");
}
