// SPDX-License-Identifier: GPL-3.0-or-later
// Pages break where a reader would break them.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "forms/print/paginate.h"
#include "forms/print/print_session.h"
#include "forms/print/typeface.h"
#include "tests/form/print_sample/sample_document.h"

using namespace spoilbook::print;

namespace {

std::vector<std::string> texts(const Page& page) {
    std::vector<std::string> all;
    for (const Op& op : page.ops) {
        if (const auto* text = std::get_if<TextOp>(&op)) {
            all.push_back(text->text.toStdString());
        }
    }
    return all;
}

bool says(const Page& page, const std::string& words) {
    for (const std::string& text : texts(page)) {
        if (text.find(words) != std::string::npos) {
            return true;
        }
    }
    return false;
}

int page_of(const std::vector<Page>& pages, const std::string& words) {
    for (std::size_t i = 0; i < pages.size(); ++i) {
        if (says(pages[i], words)) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

Table trips(int rows) {
    Table table;
    table.caption = "Trips";
    table.columns = {{"Trip", "", Align::left, 0, true}, {"In situ", "m³", Align::right, 0, true}};
    for (int i = 1; i <= rows; ++i) {
        table.rows.push_back({"T" + std::to_string(i) + ".", "347.0"});
    }
    table.total = {"Sum of all", "999.9"};
    table.notes = {"Where the numbers come from."};
    return table;
}

Document with(std::vector<Block> blocks) {
    Document document;
    document.header_left = "Consent MHB-25-117";
    document.header_right = "as at 5 June 2026";
    document.footer = "A footer";
    document.blocks = std::move(blocks);
    return document;
}

std::vector<Block> lines_then(int lines, std::vector<Block> rest) {
    std::vector<Block> blocks(static_cast<std::size_t>(lines),
                              Paragraph{"One line of text.", TextStyle::small});
    blocks.insert(blocks.end(), rest.begin(), rest.end());
    return blocks;
}

}  // namespace

TEST_CASE("every page carries the running head and its number", "[print]") {
    const PrintSession session;
    const auto pages = paginate(sample_document(400));
    REQUIRE(pages.size() > 10);
    for (std::size_t i = 0; i < pages.size(); ++i) {
        CHECK(says(pages[i], "Consent MHB-25-117"));
        CHECK(says(pages[i], "as at 5 June 2026"));
        CHECK(says(pages[i], "page " + std::to_string(i + 1) + " of " + std::to_string(pages.size())));
    }
}

TEST_CASE("nothing is drawn outside the margins", "[print]") {
    const PrintSession session;
    constexpr double margin = 30;
    for (const Page& page : paginate(sample_document(150))) {
        const double width = page.landscape ? long_edge : short_edge;
        const double height = page.landscape ? short_edge : long_edge;
        for (const Op& op : page.ops) {
            if (const auto* text = std::get_if<TextOp>(&op)) {
                INFO(text->text.toStdString());
                CHECK(text->x >= 51);
                CHECK(text->x + width_of(text->text, text->type) <= width - 51 + 0.2);
                CHECK(text->baseline > margin);
                CHECK(text->baseline < height - margin);
            }
        }
    }
}

TEST_CASE("400 rows are printed once each, under a head on each page, and only the last page is the end",
          "[print]") {
    const PrintSession session;
    const auto pages = paginate(with({trips(400)}));
    REQUIRE(pages.size() > 5);
    std::map<std::string, int> seen;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const bool last = i + 1 == pages.size();
        CHECK(says(pages[i], "In situ"));
        CHECK(says(pages[i], ", continued") == (i > 0));
        CHECK(says(pages[i], "continued on the next page") == !last);
        for (const std::string& text : texts(pages[i])) {
            seen[text] += 1;
        }
    }
    for (int row = 1; row <= 400; ++row) {
        CHECK(seen["T" + std::to_string(row) + "."] == 1);
    }
    CHECK(seen["Sum of all"] == 1);
}

TEST_CASE("the total never parts from the last row, nor from the note below it", "[print]") {
    const PrintSession session;
    for (int rows = 1; rows < 100; ++rows) {
        const auto pages = paginate(with({trips(rows)}));
        INFO(rows);
        const int last = page_of(pages, "T" + std::to_string(rows) + ".");
        CHECK(last == page_of(pages, "Sum of all"));
        CHECK(last == page_of(pages, "Where the numbers"));
        CHECK(last + 1 == static_cast<int>(pages.size()));
        CHECK(page_of(pages, "T1.") == 0);
    }
}

TEST_CASE("a heading goes to the next page with what it heads", "[print]") {
    const PrintSession session;
    for (int lines = 30; lines < 60; ++lines) {
        const auto pages =
            paginate(with(lines_then(lines, {Heading{1, "A part"}, Heading{2, "A section"}, trips(80)})));
        INFO(lines);
        CHECK(page_of(pages, "A part") == page_of(pages, "T1."));
        CHECK(page_of(pages, "A section") == page_of(pages, "T2."));
    }
}

TEST_CASE("what is kept together shares a page, and breaks only where no page could hold it", "[print]") {
    const PrintSession session;
    const KeepTogether small{{Paragraph{"first of them"}, trips(5), Paragraph{"last of them"}}};
    for (int lines = 20; lines < 60; ++lines) {
        const auto pages = paginate(with(lines_then(lines, {small})));
        INFO(lines);
        CHECK(page_of(pages, "first of them") == page_of(pages, "last of them"));
    }
    const auto large = paginate(with({KeepTogether{{trips(200), Paragraph{"behind it"}}}}));
    CHECK(large.size() > 3);
    CHECK(page_of(large, "behind it") == static_cast<int>(large.size()) - 1);
}

TEST_CASE("a row taller than a page goes on over pages, and says which row it is", "[print]") {
    const PrintSession session;
    std::string remark;
    for (int i = 0; i < 2000; ++i) {
        remark += "word" + std::to_string(i) + " ";
    }
    Table table;
    table.columns = {{"Event"}, {"What happened"}};
    table.rows = {{"E-30", "short"}, {"E-31", remark}, {"E-32", "short again"}};
    const auto pages = paginate(with({table}));
    REQUIRE(pages.size() >= 3);
    const int from = page_of(pages, "word0 ");
    const int to = page_of(pages, "word1999");
    REQUIRE(from >= 0);
    REQUIRE(to > from);
    for (int i = from; i <= to; ++i) {
        CHECK(says(pages[static_cast<std::size_t>(i)], "E-31"));
    }
}

TEST_CASE("a number is never broken, however many columns a table has", "[print]") {
    const PrintSession session;
    Table table;
    for (int i = 0; i < 24; ++i) {
        table.columns.push_back({"Column", "m³", Align::right, 0, true});
    }
    table.rows = {Row(24, Cell("12 345.6"))};
    const auto found = texts(paginate(with({table}))[0]);
    CHECK(std::count(found.begin(), found.end(), "12 345.6") == 24);
}

TEST_CASE("facts and remarks longer than a page go on over pages and stay above the foot", "[print]") {
    const PrintSession session;
    std::string remark;
    for (int i = 0; i < 1500; ++i) {
        remark += "word" + std::to_string(i) + " ";
    }
    const auto pages = paginate(with({Facts{{{"Basis", remark}}}, Paragraph{remark, TextStyle::caution}}));
    CHECK(pages.size() >= 3);
    for (const Page& page : pages) {
        for (const Op& op : page.ops) {
            const auto* text = std::get_if<TextOp>(&op);
            const bool in_column = text != nullptr && text->text.startsWith(u"word");
            CHECK_FALSE((in_column && text->baseline > long_edge - 48));
        }
    }
}

TEST_CASE("a table without rows says so in words", "[print]") {
    const PrintSession session;
    Table table = trips(0);
    table.total.clear();
    table.zero_rows_text = "Nil: no trip in this period.";
    const auto pages = paginate(with({table}));
    CHECK(pages.size() == 1);
    CHECK(says(pages[0], "Nil: no trip in this period."));
}

TEST_CASE("a section may lie across, and blank sections make no page", "[print]") {
    const PrintSession session;
    const auto pages = paginate(with({PageBreak{true}, Paragraph{"wide"}, PageBreak{true}, PageBreak{false},
                                      Paragraph{"tall"}, PageBreak{}}));
    REQUIRE(pages.size() == 2);
    CHECK(pages[0].landscape);
    CHECK_FALSE(pages[1].landscape);
    CHECK(paginate(Document{}).size() == 1);
}

TEST_CASE("a column below the grid prints its words under the row, with its title", "[print]") {
    const PrintSession session;
    Table table;
    table.columns = {{"Trip"}, {"Cell"}, {"Remark", "", Align::left, 0, false, true}};
    table.rows = {{"1", "G01", "Hung up."}, {"2", "G02", ""}};
    const auto pages = paginate(with({table}));
    CHECK(says(pages[0], "Remark: Hung up."));
    CHECK(texts(pages[0]).size() == 2 + 4 + 1 + 4);  // titles, cells, remark, head and foot
}

TEST_CASE("a table that cannot be is refused", "[print]") {
    const PrintSession session;
    Table table;
    CHECK_THROWS_AS(paginate(with({table})), std::invalid_argument);
    table.columns = {{"One"}};
    table.rows = {{"1", "2"}};
    CHECK_THROWS_AS(paginate(with({table})), std::invalid_argument);
    CHECK_THROWS_AS(paginate(with({KeepTogether{{PageBreak{}}}})), std::invalid_argument);
}
