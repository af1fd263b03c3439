// SPDX-License-Identifier: GPL-3.0-or-later
// Times in an order that cannot be: told at the box, whichever of the two was written last.
#include <QLineEdit>

#include "forms/barge/trip_page.h"
#include "forms/shared/time_field.h"
#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// The tug master's page with a trip that is back alongside.
struct TugMaster {
    Instant now = at("12:30");
    form::BookSession session;
    QWidget window;
    form::TripPage* page;

    TugMaster() : session(a_trip_done(), [this] { return now; }, {}) {
        session.set_person(QStringLiteral("Bram"));
        window.resize(1060, 900);
        page = new form::TripPage(session, &window);
        page->setGeometry(window.rect());
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    static Book a_trip_done() {
        Book book = a_barge_book();
        const auto put = [&](const char* kind_name, const char* label,
                             const std::vector<FieldInput>& inputs) {
            log_line(book, at("12:00"), kind_name, label, inputs);
        };
        put("shift", "S-0002", {{"start", "2025-11-04T05:40+13:00"}, {"dredger", "Heron"}});
        put("load", "L-0001",
            {{"barge", "Teal"},
             {"loading_start", "2025-11-04T06:05+13:00"},
             {"loading_end", "2025-11-04T08:30+13:00"}});
        put("trip", "T-0001",
            {{"load", "L-0001"},
             {"departed", "2025-11-04T08:40+13:00"},
             {"returned", "2025-11-04T11:50+13:00"}});
        put("release", "R-0001",
            {{"trip", "T-0001"},
             {"doors_open", "2025-11-04T10:05+13:00"},
             {"empty", "2025-11-04T10:13+13:00"}});
        return book;
    }
    form::TimeField& box(const char* label) {
        for (auto* field : window.findChildren<form::TimeField*>())
            if (field->isVisible() && field->label() == QString::fromUtf8(label)) return *field;
        FAIL("no box " << label);
        throw std::logic_error("not reached");
    }
    void type(const char* label, const char* text) {
        auto* edit = box(label).findChild<QLineEdit*>();
        edit->setFocus();
        QTest::keyClick(edit, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(edit, QString::fromUtf8(text));
        QTest::keyClick(edit, Qt::Key_Return);
    }
    std::string held(const char* kind_name, const char* label, const char* column) {
        return texts_of(session.book(), kind_name)[label][column];
    }
};

}  // namespace

TEST_CASE("a time of another record that it cannot be beside is told at the box, and the time is kept",
          "[barge]") {
    TugMaster t;
    t.type("Cast off", "0810");
    CHECK(t.held("trip", "T-0001", "departed") == "2025-11-04T08:10:00+13:00");
    CHECK(t.box("Cast off").problem() ==
          QStringLiteral("Kept, but it is before “Full of load L-0001”, 08:30. Mend the one that is wrong."));
    t.type("Cast off", "1006");
    CHECK(
        t.box("Cast off").problem().contains(QStringLiteral("after “Doors open of release R-0001”, 10:05")));
    CHECK(t.box("Doors open").problem().contains(QStringLiteral("before “Cast off of trip T-0001”, 10:06")));
    t.type("Cast off", "0840");
    CHECK(t.box("Cast off").problem().isEmpty());
    CHECK(t.box("Doors open").problem().isEmpty());
}

TEST_CASE("an end before its own start is refused at the box with both times, and stays as it was typed",
          "[barge]") {
    TugMaster t;
    t.type("Empty", "1001");
    CHECK(t.held("release", "R-0001", "empty") == "2025-11-04T10:13:00+13:00");
    const QString problem = t.box("Empty").problem();
    CHECK(problem.contains(QStringLiteral("10:01")));
    CHECK(problem.contains(QStringLiteral("is before doors open")));
    CHECK(problem.contains(QStringLiteral("10:05")));
    CHECK(t.box("Empty").findChild<QLineEdit*>()->text() == QStringLiteral("10:01"));
    t.type("Empty", "1015");
    CHECK(t.box("Empty").problem().isEmpty());
    CHECK(t.held("release", "R-0001", "empty") == "2025-11-04T10:15:00+13:00");
}
