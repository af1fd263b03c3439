// SPDX-License-Identifier: GPL-3.0-or-later
// What the desk says before a release is of the book as it is now.
#include <QSignalSpy>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/barge/release_line.h"
#include "forms/barge/shift_page.h"
#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using form::BookSession;
using form::ReleaseLine;

namespace {

constexpr int patience_ms = 20000;

/// The invented book with one condition, no release above 1.8 m, and a load that waits full for its tow.
Book a_book_with_a_sea_limit() {
    Book book = a_barge_book();
    const Id consent = log_row(book, by("Ana"), "consent", {{"consent", std::string("C-7")}});
    log_row(
        book, by("Ana"), "condition",
        {{"condition", std::string("17")},
         {"consent", consent},
         {"kind", std::string("series")},
         {"body",
          std::string(
              R"({"applies":{"activity":"release"},"variable":"wave_height_m",)"
              R"("statistic":{"kind":"instant"},"compare":{"absolute":1.8},"passes":{"at_once":true}})")}});
    log_line(book, at("06:30"), "load", "L-0001",
             {{"barge", "Teal"},
              {"loading_start", "2025-11-04T06:05+13:00"},
              {"loading_end", "2025-11-04T06:25+13:00"},
              {"dips_m", "0.36 0.38 0.30 0.31"}});
    return book;
}

struct Asked {
    BookSession session{a_book_with_a_sea_limit(), [] { return at("07:00"); }, {}};
    ReleaseLine line{session, nullptr};
    QSignalSpy answers{&line, &ReleaseLine::due_cell};
    PlannedRelease planned;

    Asked() {
        session.set_person(QStringLiteral("Bram"));
        planned.load = session.season().loads.rows().front().id;
        planned.at = at("08:00");
    }
    void log(const char* kind_name, const char* label, const std::vector<FieldInput>& inputs) {
        REQUIRE(session.log(QStringLiteral("a test"), kind(kind_name), label, inputs).empty());
    }
    QString answer() {
        answers.clear();
        line.ask(planned);
        REQUIRE(answers.wait(patience_ms));
        return line.accessibleName();
    }
    bool asks_again() {
        answers.clear();
        line.ask(planned);
        return answers.wait(500);
    }
};

}  // namespace

TEST_CASE("the release is asked about again when an observation is written, and when the ground is chosen",
          "[barge]") {
    Asked asked;
    CHECK(asked.answer().contains(QStringLiteral("Condition 17 cannot be told")));
    asked.log("observation", "OB-0001", {{"time", "2025-11-04T07:00+13:00"}, {"wave_height_m", "1.2"}});
    CHECK(asked.answer().contains(QStringLiteral("nothing that is judged stops it")));
    asked.log("observation", "OB-0001", {{"wave_height_m", "2.4"}});
    CHECK(asked.answer().contains(QStringLiteral("Condition 17 holds it")));
    CHECK_FALSE(asked.asks_again());
    asked.planned.ground = asked.session.season().grounds.rows().front().id;
    CHECK(asked.asks_again());
}

TEST_CASE("the answer names the load that it is for, and whether she is the next or on her way", "[barge]") {
    Asked asked;
    CHECK(asked.answer().startsWith(QStringLiteral("Next load, L-0001")));
    asked.log("trip", "T-0001", {{"load", "L-0001"}, {"departed", "2025-11-04T06:40+13:00"}});
    CHECK(asked.answer().startsWith(QStringLiteral("This load, L-0001")));
    // Another barge goes out beside her: her own answer stays hers.
    asked.log("load", "L-0002", {{"barge", "Wigeon"}, {"loading_start", "2025-11-04T06:50+13:00"}});
    asked.planned.load = asked.session.season().loads.rows().back().id;
    CHECK(asked.answer().startsWith(QStringLiteral("Next load, L-0002")));
}

TEST_CASE("buckets into a barge that still loads do not ask again, a mended tally of a full one does",
          "[barge]") {
    Asked asked;
    asked.log("load", "L-0002", {{"barge", "Wigeon"}, {"loading_start", "2025-11-04T06:50+13:00"}});
    asked.log("tally", "TA-0001", {{"load", "L-0001"}, {"station", "ST-0001"}, {"count", "80"}});
    asked.answer();
    asked.log("tally", "TA-0002", {{"load", "L-0002"}, {"station", "ST-0001"}, {"count", "1"}});
    CHECK_FALSE(asked.asks_again());
    asked.log("tally", "TA-0001", {{"count", "81"}});
    CHECK(asked.asks_again());
}

TEST_CASE("the wave height of the shift does not stand for the present one", "[barge]") {
    Instant now = at("06:00");
    BookSession session{a_book_with_a_sea_limit(), [&now] { return now; }, {}};
    session.set_person(QStringLiteral("Bram"));
    REQUIRE(session
                .log(QStringLiteral("a test"), kind("shift"), "S-0002",
                     {{"start", "2025-11-04T05:40+13:00"}, {"dredger", "Heron"}, {"wave_height_m", "1.1"}})
                .empty());
    form::ShiftPage page(session, nullptr);
    page.resize(1060, 640);
    page.show();
    auto* line = page.findChild<ReleaseLine*>();
    REQUIRE(line != nullptr);
    CHECK(QTest::qWaitFor(
        [line] { return line->accessibleName().contains(QStringLiteral("Condition 17 cannot be told")); },
        patience_ms));
}

namespace {

/// Waits until the answer on the page has these words, and is in sight.
bool reads(const ReleaseLine& line, const char* words) {
    return QTest::qWaitFor(
        [&] { return line.isVisible() && line.accessibleName().contains(QString::fromUtf8(words)); },
        patience_ms);
}

/// The running shift before a release, the sea as it was seen at ten.
Wheelhouse& at_sea(Wheelhouse& w, const char* wave_height_m) {
    w.press(Qt::Key_F2, "05:40");
    REQUIRE(w.session
                .log(QStringLiteral("a test"), kind("observation"), "OB-0001",
                     {{"time", "2025-11-04T10:00+13:00"}, {"wave_height_m", wave_height_m}})
                .empty());
    w.press(Qt::Key_F7, "08:40");
    return w;
}

}  // namespace

TEST_CASE("what stands against a release stays in view when its doors open, until she is alongside",
          "[barge]") {
    Wheelhouse w(a_book_with_a_sea_limit());
    at_sea(w, "2.4");
    const auto& line = *w.page->findChild<ReleaseLine*>();
    REQUIRE(reads(line, "L-0001, release about"));
    w.press(Qt::Key_F7, "10:05");
    CHECK(reads(line, "This load, L-0001, doors opened 10:05: Condition 17 stands against it: "));
    CHECK_FALSE(line.accessibleName().contains(QStringLiteral("holds it")));
    for (const char* clock : {"10:13", "10:16"}) {
        INFO(clock);
        w.press(Qt::Key_F7, clock);
        QTest::qWait(50);
        CHECK(reads(line, "doors opened 10:05: Condition 17 stands against it"));
    }
    w.press(Qt::Key_F7, "11:50");
    CHECK(QTest::qWaitFor([&line] { return !line.isVisible(); }, patience_ms));
}

TEST_CASE("where nothing stands against it the desk is quiet once the doors are open", "[barge]") {
    Wheelhouse w(a_book_with_a_sea_limit());
    at_sea(w, "1.2");
    const auto& line = *w.page->findChild<ReleaseLine*>();
    REQUIRE(reads(line, "L-0001, release about"));
    w.press(Qt::Key_F7, "10:05");
    CHECK(QTest::qWaitFor([&line] { return !line.isVisible(); }, patience_ms));
}
