// SPDX-License-Identifier: GPL-3.0-or-later
// The barge ticket, filled in by keys as the paper one is.
#include <QLabel>
#include <QLineEdit>

#include "forms/barge/barge_ticket.h"
#include "forms/barge/draughts_field.h"
#include "forms/shared/state_mark.h"
#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// A book whose barge can be weighed: 100 t every 0.2 m, so that 1 m light and 2.5 m full are 750 t.
Book a_weighed_book() {
    Book book = a_barge_book();
    log_line(book, at("02:00"), "material", "silty sand",
             {{"situ_density_t_m3", "1.9"}, {"grain_density_t_m3", "2.65"}});
    log_line(book, at("02:00"), "barge", "Teal",
             {{"hydrostatic_table", "[[0.6,300],[4.0,2000]]"},
              {"hydrostatic_density_t_m3", "1.025"},
              {"draught_u_m", "0.01"},
              {"ullage_u_m", "0.02"}});
    return book;
}

/// A load alongside with one bucket in it, and its ticket open.
struct AtTheTicket : Wheelhouse {
    AtTheTicket() : Wheelhouse(a_weighed_book()) {
        press(Qt::Key_F2, "05:40");
        press(Qt::Key_F2, "06:00");
        choose(QStringLiteral("Barge"), QStringLiteral("Te"));
        press(Qt::Key_F4, "06:02");
        press(Qt::Key_F5, "06:05");
        open();
    }
    void open() {
        QTest::keyClick(focused(), Qt::Key_F6, Qt::ShiftModifier);
        REQUIRE(ticket());
    }
    form::BargeTicket* ticket() { return window.findChild<form::BargeTicket*>(); }
    void marks(const QString& reading, const std::vector<const char*>& texts) {
        go_to(reading + QStringLiteral(", fore port"));
        for (const char* text : texts) {
            QTest::keyClicks(focused(), QString::fromLatin1(text));
            QTest::keyClick(focused(), Qt::Key_Tab);
        }
    }
    std::string held(const std::string& column) {
        return texts_of(session.book(), "load").at("L-0001")[column];
    }
    bool says(const QString& words) {
        for (const QLabel* label : ticket()->findChildren<QLabel*>()) {
            if (label->isVisibleTo(ticket()) && label->text().contains(words)) return true;
        }
        return false;
    }
    bool shows(form::State state, const QString& word) {
        for (const auto* mark : ticket()->findChildren<form::StateMark*>()) {
            if (mark->isVisibleTo(ticket()) && mark->state() == state && mark->word().startsWith(word))
                return true;
        }
        return false;
    }
};

}  // namespace

TEST_CASE("six marks go into the book when the last is left, port and starboard abreast", "[barge]") {
    AtTheTicket t;
    t.marks(QStringLiteral("Draughts, light"), {"1.0", "1.02", "1.1", "1.12", "1.2"});
    CHECK(t.held("light_draughts_m").empty());
    QTest::keyClicks(t.focused(), QStringLiteral("1.22"));
    QTest::keyClick(t.focused(), Qt::Key_Return);
    CHECK(t.held("light_draughts_m") == "1 1.02 1.1 1.12 1.2 1.22");
}

TEST_CASE("four marks at the ends are a reading, a missing one is named and what was typed stays",
          "[barge]") {
    AtTheTicket t;
    t.marks(QStringLiteral("Draughts, full"), {"2.5", "2.5", "2.6", "", "2.7", "2.7"});
    CHECK(t.held("full_draughts_m").empty());
    CHECK(t.says(QStringLiteral("Not in the book yet: midships starboard missing")));
    t.go_to(QStringLiteral("Draughts, full, midships port"));
    CHECK(t.focused()->accessibleDescription().contains(QStringLiteral("midships starboard missing")));
    QTest::keyClick(t.focused(), Qt::Key_Escape);
    t.open();
    t.go_to(QStringLiteral("Draughts, full, midships port"));
    CHECK(qobject_cast<QLineEdit*>(t.focused())->text() == QStringLiteral("2.6"));
    t.type(QStringLiteral("Draughts, full, midships port"), QString(QChar(u' ')));
    CHECK(t.held("full_draughts_m") == "2.5 2.5 2.7 2.7");
}

TEST_CASE("the answer follows each key, before anything is written", "[barge]") {
    AtTheTicket t;
    t.go_to(QStringLiteral("Dips, coaming"));
    QTest::keyClicks(t.focused(), QStringLiteral("0.7"));
    // The table is 420 m³ at 0.2 m and 300 m³ at 1.2 m: halfway down it holds 360.
    CHECK(t.says(QStringLiteral("360")));
    CHECK(t.held("dips_m").empty());
    QTest::keyClicks(t.focused(), QStringLiteral(" 0.9"));
    CHECK(t.says(QStringLiteral("348")));
    CHECK(t.shows(form::State::attention, QStringLiteral("disagrees, E_n")));  // one bucket of a whole load
}

TEST_CASE("two methods that disagree say so in word and shape when the load is closed", "[barge]") {
    AtTheTicket t;
    t.type(QStringLiteral("Dips, coaming"), QStringLiteral("0.7 0.72"));
    t.marks(QStringLiteral("Draughts, light"), {"1", "1", "1", "1", "1", "1"});
    t.marks(QStringLiteral("Draughts, full"), {"1.4", "1.4", "1.4", "1.4", "1.4", "1.4"});
    CHECK(t.shows(form::State::attention, QStringLiteral("methods disagree")));
    t.press(Qt::Key_F6, "08:30");
    CHECK_FALSE(t.held("loading_end").empty());
    CHECK(t.shows(form::State::attention, QStringLiteral("methods disagree")));
}

TEST_CASE("centimetres typed as metres are asked about beside the box", "[barge]") {
    AtTheTicket t;
    t.type(QStringLiteral("Dips, coaming"), QStringLiteral("36 38"));
    CHECK(t.says(QStringLiteral("Typed in centimetres? That would be 0.36 m.")));
    CHECK(t.held("dips_m") == "36 38");
    t.type(QStringLiteral("Dips, coaming"), QStringLiteral("136 138"));
    CHECK(t.says(QStringLiteral("136 is outside the range; it must be 0 to 50 m. Typed in centimetres?")));
    CHECK(t.held("dips_m") == "36 38");
    t.marks(QStringLiteral("Draughts, full"), {"142", "1.4"});
    t.go_to(QStringLiteral("Draughts, light, fore port"));
    CHECK(
        t.says(QStringLiteral("142 m, fore port, is not possible: it lies between 0 and 30 m. Typed in "
                              "centimetres? That would be 1.42 m.")));
}

TEST_CASE("light heavier than loaded is told beside both readings", "[barge]") {
    AtTheTicket t;
    t.marks(QStringLiteral("Draughts, light"), {"2.5", "2.5", "2.5", "2.5", "2.5", "2.5"});
    t.marks(QStringLiteral("Draughts, full"), {"1", "1", "1", "1", "1", "1"});
    t.go_to(QStringLiteral("Draughts, light, fore port"));
    CHECK(t.focused()->accessibleDescription().contains(QStringLiteral("heavier than loaded")));
    t.go_to(QStringLiteral("Draughts, full, fore port"));
    CHECK(t.focused()->accessibleDescription().contains(QStringLiteral("heavier than loaded")));
}

TEST_CASE("draughts outside the barge's table are kept and answered beside them", "[barge]") {
    AtTheTicket t;
    t.marks(QStringLiteral("Draughts, light"), {"1", "1", "1", "1", "1", "1"});
    t.marks(QStringLiteral("Draughts, full"), {"4.5", "4.5", "4.5", "4.5", "4.5", "4.5"});
    CHECK(t.held("full_draughts_m") == "4.5 4.5 4.5 4.5 4.5 4.5");
    CHECK(t.says(QStringLiteral("a mean of 4.50 m is outside Teal's table, 0.60 to 4.00 m")));
}

TEST_CASE("every box of the ticket has a name for who cannot see it", "[barge]") {
    AtTheTicket t;
    for (const QLineEdit* box : t.ticket()->findChildren<QLineEdit*>()) {
        INFO(box->parent()->objectName().toStdString());
        CHECK_FALSE(box->accessibleName().isEmpty());
    }
}
