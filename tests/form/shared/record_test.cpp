// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/shared/record_sheet.h"
#include "forms/shared/records_leaf.h"
#include "forms/shared/table_view.h"
#include "forms/shared/text_field.h"
#include "model/book/open.h"
#include "model/folder/import_folder.h"
#include "model/unit/time_text.h"
#include "tests/form/shared/record_keys.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

Instant evening() {
    return parse_instant("2026-05-30T18:00+12:00", Zone::utc()).value();
}

// A book of one harbour, two people, a tug and a barge, all invented.
struct Harbourside {
    QTemporaryDir folder;
    std::unique_ptr<BookSession> session;

    Harbourside() {
        put("harbour.json", R"({"name": "Marram Harbour Board", "works": "Ferry Basin", "epsg": 32760,
                               "zone": "Pacific/Auckland", "water_density_t_m3": 1.025, "vertical_datum": "CD"})");
        put("people.csv", "name,role\nAna,skipper\nBram,tug_master\n");
        const std::string book = path("book.sbook");
        const auto made = make_book(book, "office", [&](Book& fresh) -> Checked<Done> {
            const auto outcome = import_folder(fresh, path("in"), {EntryKind::import, evening(), "Ana", ""});
            if (!outcome) return outcome.refusals();
            return Done{};
        });
        INFO(refusals_shown(made.refusals()).toStdString());
        REQUIRE(made.ok());
        auto opened = Book::open_to_write(book, "office", {EntryKind::upgrade, evening(), "", ""});
        REQUIRE(opened.ok());
        session = std::make_unique<BookSession>(std::move(*opened), evening, QString());
        session->set_person(QStringLiteral("Ana"));
    }
    [[nodiscard]] std::string path(const char* name) const {
        return folder.filePath(QString::fromLatin1(name)).toStdString();
    }
    void put(const char* name, const char* text) {
        QDir(folder.path()).mkdir(QStringLiteral("in"));
        QFile file(folder.filePath(QStringLiteral("in/") + QString::fromLatin1(name)));
        REQUIRE(file.open(QIODevice::WriteOnly));
        file.write(text);
    }
    void log(const char* kind_name, const char* label, const char* column, const char* text) {
        const Refusals refusals =
            session->log(QStringLiteral("a test"), kind(kind_name), label, {{column, text}});
        INFO(refusals_shown(refusals).toStdString());
        REQUIRE(refusals.empty());
    }
};

}  // namespace

TEST_CASE("what is typed on a record's sheet is in the book when the field is left, and undo takes it back",
          "[record]") {
    Harbourside here;
    here.log("trip", "T-0001", "departed", "2026-05-30T16:00+12:00");
    RecordSheet sheet(*here.session, kind("trip"), here.session->book().labelled(kind("trip"), "T-0001")->id);
    sheet.show();
    REQUIRE(QTest::qWaitForWindowActive(&sheet));
    QSignalSpy changed(here.session.get(), &Session::changed);
    type_into(field_of(sheet, "Release start"), "1732");
    CHECK(field_of(sheet, "Release start")->problem().isEmpty());
    CHECK(changed.size() == 1);
    const Kind& trip = kind("trip");
    const auto row = here.session->book().labelled(trip, "T-0001");
    REQUIRE(row.has_value());
    CHECK(std::get<std::int64_t>(row->values[*trip.index_of("release_start")]) ==
          parse_instant("2026-05-30T17:32+12:00", Zone::utc()).value().utc_ms);
    CHECK(here.session->undo_text().contains(QStringLiteral("trip T-0001")));
    CHECK(here.session->undo().isEmpty());
    CHECK(is_blank(here.session->book().labelled(trip, "T-0001")->values[*trip.index_of("release_start")]));
    CHECK(here.session->redo_text().contains(QStringLiteral("trip T-0001")));
}

TEST_CASE("what the book refuses stays in the field with the reason, and the book as it was", "[record]") {
    Harbourside here;
    here.log("trip", "T-0001", "departed", "2026-05-30T16:00+12:00");
    RecordSheet sheet(*here.session, kind("trip"), here.session->book().labelled(kind("trip"), "T-0001")->id);
    sheet.show();
    REQUIRE(QTest::qWaitForWindowActive(&sheet));
    type_into(field_of(sheet, "Returned"), "2026-05-30 15:00");
    CHECK(field_of(sheet, "Returned")->text() == QStringLiteral("2026-05-30 15:00"));
    CHECK_FALSE(field_of(sheet, "Returned")->problem().isEmpty());
    const Kind& trip = kind("trip");
    CHECK(is_blank(here.session->book().labelled(trip, "T-0001")->values[*trip.index_of("returned")]));
}

TEST_CASE("a record that another hand writes appears in the table, and the place in it stays", "[record]") {
    Harbourside here;
    for (const char* label : {"T-0001", "T-0002", "T-0003"}) {
        here.log("trip", label, "departed", "2026-05-30T16:00+12:00");
    }
    RecordsLeaf leaf(*here.session, {"trip", "load"});
    leaf.show();
    auto* view = leaf.findChild<TableView*>();
    view->table()->setCurrentIndex(view->table()->model()->index(1, 0));
    here.log("trip", "T-0004", "departed", "2026-05-30T17:00+12:00");
    CHECK(view->shown_rows()->rowCount() == 4);
    CHECK(view->current_row() == 1);
}

TEST_CASE("the session names harbour, people and zone, and its as-at moves figures alone", "[record]") {
    Harbourside here;
    CHECK(here.session->harbour() == QStringLiteral("Marram Harbour Board"));
    REQUIRE(here.session->people().size() == 2);
    CHECK(here.session->people()[1].role == QStringLiteral("tug master"));
    CHECK(here.session->zone().name() == "Pacific/Auckland");
    CHECK(here.session->figures_at() == evening());
    const Instant before = evening() - ms_per_day;
    here.session->set_as_at(before);
    CHECK(here.session->figures_at() == before);
    CHECK(here.session->now() == evening());
}

TEST_CASE("a backup is a book of its own, and is not written over another file", "[record]") {
    Harbourside here;
    const QString to = here.folder.filePath(QStringLiteral("copy.sbook"));
    CHECK(here.session->back_up(to)({}).isEmpty());
    CHECK(Book::open_to_read(to.toStdString()).ok());
    CHECK_FALSE(here.session->back_up(to)({}).isEmpty());
}
