// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/write_condition.h"

#include <catch2/catch.hpp>

#include "model/book/season.h"
#include "model/folder/condition_reader.h"
#include "model/unit/time_text.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

struct Office {
    Book book = Book::in_memory("office");
    TinySeason tiny = log_tiny_season(book);
    Id ground = log_row(book, by("Ana", 90), "ground", {{"ground", "Gannet Patch"}});
    Id consent = log_row(book, by("Ana", 91), "consent", {{"consent", "X-1"}});

    Condition read(const std::string& members) const {
        Condition condition = condition_from_text(members, "condition", book_zone(book)).value();
        condition.consent = consent;
        return condition;
    }
    std::string code(const Checked<Id>& done) const {
        return done ? "written" : done.refusals().front().code;
    }
    std::vector<Condition> conditions() const { return read_season(book).conditions.rows(); }
};

constexpr const char* at_most_200 =
    R"({"condition":"4","text":"a limit","kind":"quantity","measure":"in_situ_m3",
    "value":200,"window":{"kind":"term"},"applies":{"grounds":["Gannet Patch"]}})";
constexpr const char* at_most_150 =
    R"({"condition":"4","text":"less","kind":"quantity","measure":"in_situ_m3",
    "value":150,"window":{"kind":"term"},"from":"2025-06-01"})";

}  // namespace

TEST_CASE("a changed condition is a new version, and the one before ends where it begins", "[logging]") {
    Office here;
    REQUIRE(here.code(write_condition(here.book, by("Ana", 100), here.read(at_most_200))) == "written");
    REQUIRE(here.code(write_condition(here.book, by("Ana", 101, "letter 9"), here.read(at_most_150))) ==
            "written");
    const auto conditions = here.conditions();
    REQUIRE(conditions.size() == 2);
    const Instant june = *parse_instant_or_day("2025-06-01", book_zone(here.book));
    CHECK(conditions[0].to == june);
    CHECK(conditions[0].text == "a limit");
    CHECK(conditions[1].from == june);
    CHECK_FALSE(conditions[1].to.has_value());
    // One entry: one undo takes both back.
    REQUIRE(undo(here.book, by("Ana", 102, "", EntryKind::undo)).ok());
    REQUIRE(here.conditions().size() == 1);
    CHECK_FALSE(here.conditions()[0].to.has_value());
}

TEST_CASE("a version needs its own beginning after the others, and a reason", "[logging]") {
    Office here;
    REQUIRE(here.code(write_condition(here.book, by("Ana", 100), here.read(at_most_200))) == "written");
    CHECK(here.code(write_condition(here.book, by("Ana", 101, "why"), here.read(at_most_200))) ==
          "missing-member");
    CHECK(here.code(write_condition(here.book, by("Ana", 101), here.read(at_most_150))) == "reason-needed");
    REQUIRE(here.code(write_condition(here.book, by("Ana", 101, "why"), here.read(at_most_150))) ==
            "written");
    CHECK(here.code(write_condition(here.book, by("Ana", 102, "again"), here.read(at_most_150))) == "twice");
    CHECK(here.conditions().size() == 2);
}

TEST_CASE("a name that the book does not have is refused where it stands", "[logging]") {
    Office here;
    Condition lost = here.read(at_most_200);
    lost.body =
        R"({"measure":"trips","value":1,"window":{"kind":"trip"},"applies":{"grounds":["Ganet Patch"]}})";
    const auto done = write_condition(here.book, by("Ana", 100), lost);
    REQUIRE_FALSE(done.ok());
    CHECK(done.refusals().front().where == "condition applies.grounds[0]");
    CHECK(done.refusals().front().mend.find("Gannet Patch") != std::string::npos);
    CHECK(here.conditions().empty());
    lost.consent = here.ground;
    CHECK(here.code(write_condition(here.book, by("Ana", 100), lost)) == "unknown-reference");
}

TEST_CASE("a condition read and written out again is the same, and a wrong member is named", "[logging]") {
    const Zone zone = *Zone::named("Pacific/Auckland");
    const Condition read = condition_from_text(std::string_view(at_most_150), "f", zone).value();
    const auto again =
        condition_from(nlohmann::json::parse(condition_as_json(read, zone).dump()), "f", zone).value();
    CHECK(again.body == read.body);
    CHECK(again.from == read.from);
    CHECK(again.text == "less");
    const auto wrong =
        condition_from_text(std::string_view(R"({"condition":"4","kind":"quantity","measure":"in_situ_m3",
        "value":1,"window":{"kind":"rolling","n":0,"unit":"months"}})"),
                            "f", zone);
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.refusals().front().where == "f window.n");
}
