// SPDX-License-Identifier: GPL-3.0-or-later
// The row that is pressed is the row that is shown and changed, whatever its label.
#include <QLabel>
#include <QLineEdit>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/shared/record_sheet.h"
#include "forms/shared/records_leaf.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/shared/text_field.h"
#include "model/book/journal.h"
#include "tests/form/shared/record_keys.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

/// An invented book with two grounds of one cell name, a condition in two versions, and a tally without
/// label.
struct Harbourside {
    Book made = Book::in_memory("office");
    Id tally, old_version;
    std::unique_ptr<BookSession> session;
    std::unique_ptr<RecordsLeaf> leaf;

    Harbourside() {
        const TinySeason tiny = log_tiny_season(made);
        tally = log_row(made, by("Ana", 1), "tally",
                        {{"load", tiny.load}, {"station", tiny.station}, {"count", 31.0}});
        for (const char* name : {"Gannet Patch", "Outer Patch"}) {
            const Id ground = log_row(made, by("Ana", 2), "ground", {{"ground", std::string(name)}});
            log_row(made, by("Ana", 3), "cell",
                    {{"cell", std::string("A1")}, {"ground", ground}, {"kind", std::string("cell")}});
        }
        const Id consent = log_row(made, by("Ana", 4), "consent", {{"consent", std::string("C-7")}});
        const auto version = [&](Instant from, const char* text) {
            return log_row(made, by("Ana", 5), "condition",
                           {{"condition", std::string("11")},
                            {"consent", consent},
                            {"from", time_of(from)},
                            {"text", std::string(text)},
                            {"kind", std::string("text")}});
        };
        old_version = version(morning(-1000), "the older words");
        version(morning(0), "the newer words");
    }
    /// Opens the first row of a kind as a person does, and answers its sheet.
    RecordSheet* open_first(const char* kind_name) {
        session = std::make_unique<BookSession>(
            std::move(made), [] { return morning(100); }, QString());
        session->set_person(QStringLiteral("Ana"));
        leaf = std::make_unique<RecordsLeaf>(*session, std::vector<std::string>{kind_name});
        leaf->show();
        REQUIRE(QTest::qWaitForWindowActive(leaf.get()));
        auto* table = leaf->findChild<TableView*>()->table();
        table->setCurrentIndex(table->model()->index(0, 0));
        table->setFocus();
        QTest::keyClick(table, Qt::Key_Return);
        auto* sheet = leaf->findChild<RecordSheet*>();
        REQUIRE(sheet != nullptr);
        return sheet;
    }
    [[nodiscard]] QString title() const { return leaf->findChild<Sheet*>()->accessibleName(); }
};

}  // namespace

TEST_CASE("a tally without a number of its own is opened as it stands, and changing it makes no other",
          "[record]") {
    Harbourside here;
    RecordSheet* sheet = here.open_first("tally");
    CHECK(field_of(*sheet, "Count")->text() == QStringLiteral("31"));
    CHECK(here.title().startsWith(QStringLiteral("Tally L1, ")));
    type_into(field_of(*sheet, "Count"), "32");
    CHECK(field_of(*sheet, "Count")->problem().isEmpty());
    const Book& book = here.session->book();
    CHECK(book.rows(kind("tally")).size() == 1);
    CHECK(std::get<double>(field_of(book, "tally", here.tally, "count")) == 32);
    // Nor is it spoken of by 32 hexadecimal digits.
    CHECK(here.session->undo_text().startsWith(QStringLiteral("tally L1, ")));
}

TEST_CASE("of two versions of a condition the one that was pressed is shown and changed", "[record]") {
    Harbourside here;
    RecordSheet* sheet = here.open_first("condition");
    CHECK(field_of(*sheet, "Text")->text() == QStringLiteral("the older words"));
    type_into(field_of(*sheet, "Text"), "the older words, mended");
    CHECK(field_of(*sheet, "Text")->problem().isEmpty());
    const Book& book = here.session->book();
    CHECK(field_of(book, "condition", here.old_version, "text") ==
          Value(std::string("the older words, mended")));
    const Row newer = book.rows(kind("condition")).back();
    CHECK(field_of(book, "condition", newer.id, "text") == Value(std::string("the newer words")));
}

TEST_CASE("of two cells of one name the one in the ground that was pressed is opened", "[record]") {
    Harbourside here;
    here.open_first("cell");
    CHECK(here.title() == QStringLiteral("Cell A1, Gannet Patch"));
}

TEST_CASE("a press that changes nothing writes nothing and says nothing", "[record]") {
    Harbourside here;
    RecordSheet* sheet = here.open_first("tally");
    const auto entries = journal_state(here.session->book()).entries;
    int changed = 0;
    QObject::connect(here.session.get(), &Session::changed, [&] { ++changed; });
    type_into(field_of(*sheet, "Count"), "31");
    CHECK(here.session
              ->write(QStringLiteral("the same"), EntryKind::change, {},
                      [](Book&, const Act&) -> Checked<Done> { return Done{}; })
              .empty());
    CHECK(changed == 0);
    CHECK_FALSE(here.session->last_written().has_value());
    CHECK(journal_state(here.session->book()).entries == entries);
}
