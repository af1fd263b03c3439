// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/sign_shift.h"

#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

void walk(Wheelhouse& w) {
    w.press(Qt::Key_F2, "05:40");
    w.press(Qt::Key_F1, "05:42");
    w.type(QStringLiteral("Weather"), QStringLiteral("fine, light airs"));
    QTest::keyClick(w.focused(), Qt::Key_Escape);
    w.press(Qt::Key_F8, "05:45");
    w.choose(QStringLiteral("Cause of the delay"), QStringLiteral("too"));
    w.press(Qt::Key_F8, "05:58");
    w.press(Qt::Key_F2, "06:00");
    w.choose(QStringLiteral("Barge"), QStringLiteral("Te"));
    w.press(Qt::Key_F4, "06:02");
    w.press(Qt::Key_F5, "06:05");
    w.press(Qt::Key_F5, "06:06");
    w.now = at("07:59");
    w.type(QStringLiteral("Tally at this station"), QStringLiteral("85"));
    w.press(Qt::Key_F3, "08:00");
    w.press(Qt::Key_F5, "08:06");
    w.now = at("08:29");
    w.type(QStringLiteral("Dips"), QStringLiteral("0.36 0.38 0.30 0.31"));
    w.press(Qt::Key_F6, "08:30");
    w.press(Qt::Key_F7, "08:40");
    w.choose(QStringLiteral("Disposal ground"), QStringLiteral("G"));
    w.choose(QStringLiteral("Cell"), QStringLiteral("A1"));
    w.press(Qt::Key_F7, "10:05");
    w.type(QStringLiteral("Latitude"), QStringLiteral("-40.585"));
    w.type(QStringLiteral("Longitude"), QStringLiteral("179.63"));
    w.press(Qt::Key_F7, "10:13");
    w.press(Qt::Key_F7, "10:16");
    w.press(Qt::Key_F7, "11:50");
    w.press(Qt::Key_F9, "12:00");
    w.type(QStringLiteral("Depth below the water"), QStringLiteral("10.6"));
    w.type(QStringLiteral("Level of the water"), QStringLiteral("0.8"));
    QTest::keyClick(w.focused(), Qt::Key_Escape);
    w.press(Qt::Key_F11, "17:50");
    w.type(QStringLiteral("The next move"), QStringLiteral("carry on astern"));
    QTest::keyClick(w.focused(), Qt::Key_Escape);
    w.press(Qt::Key_F2, "17:55");
    w.press(Qt::Key_F12, "18:00");
    w.press(Qt::Key_F11, "18:00");
    w.choose(QStringLiteral("Name of who signs"), QStringLiteral("B"));
    w.press(Qt::Key_F12, "18:10");
}

/// The same shift as `sbk log` and `sbk sign` would be given it.
Book the_same_by_command() {
    Book book = a_barge_book();
    const auto put = [&](const std::string& kind_name, const std::string& label,
                         const std::vector<FieldInput>& inputs) {
        log_line(book, at("18:30"), kind_name, label, inputs);
    };
    put("shift", "S-0002",
        {{"start", "2025-11-04T05:40+13:00"},
         {"end", "2025-11-04T18:00+13:00"},
         {"dredger", "Heron"},
         {"tug", "Plover"},
         {"skipper", "Bram"},
         {"crew", "Caro;Hal"},
         {"weather", "fine, light airs"}});
    put("crew", "CR-0002",
        {{"shift", "S-0002"},
         {"name", "Hal"},
         {"role", "operator"},
         {"on", "2025-11-04T05:40+13:00"},
         {"off", "2025-11-04T18:00+13:00"}});
    put("delay", "D-0001",
        {{"shift", "S-0002"},
         {"start", "2025-11-04T05:45+13:00"},
         {"end", "2025-11-04T05:58+13:00"},
         {"cause", "toolbox or drill"}});
    // Heading 90°, no step known: 5 m astern is 5 m west, then again.
    put("station", "ST-0002",
        {{"shift", "S-0002"},
         {"claim", "FB1"},
         {"easting_m", "711522.7"},
         {"northing_m", "5497350.3"},
         {"heading_deg", "90"},
         {"spuds_down", "2025-11-04T06:00+13:00"},
         {"spuds_up", "2025-11-04T08:00+13:00"}});
    put("station", "ST-0003",
        {{"shift", "S-0002"},
         {"claim", "FB1"},
         {"easting_m", "711517.7"},
         {"northing_m", "5497350.3"},
         {"heading_deg", "90"},
         {"spuds_down", "2025-11-04T08:00+13:00"},
         {"spuds_up", "2025-11-04T17:55+13:00"}});
    put("load", "L-0001",
        {{"barge", "Teal"},
         {"loading_start", "2025-11-04T06:05+13:00"},
         {"loading_end", "2025-11-04T08:30+13:00"},
         {"dips_m", "0.36 0.38 0.30 0.31"}});
    put("tally", "TA-0001",
        {{"load", "L-0001"},
         {"station", "ST-0002"},
         {"bucket", "General"},
         {"count", "85"},
         {"counted", "pressed"}});
    put("tally", "TA-0002",
        {{"load", "L-0001"},
         {"station", "ST-0003"},
         {"bucket", "General"},
         {"count", "1"},
         {"counted", "pressed"}});
    put("trip", "T-0001",
        {{"load", "L-0001"},
         {"tug", "Plover"},
         {"departed", "2025-11-04T08:40+13:00"},
         {"returned", "2025-11-04T11:50+13:00"},
         {"ground", "Gannet Patch"},
         {"cell", "A1"}});
    put("release", "R-0001",
        {{"trip", "T-0001"},
         {"doors_open", "2025-11-04T10:05+13:00"},
         {"empty", "2025-11-04T10:13+13:00"},
         {"doors_shut", "2025-11-04T10:16+13:00"},
         {"ground", "Gannet Patch"},
         {"cell", "A1"},
         {"lat", "-40.585"},
         {"lon", "179.63"},
         {"emptied", "yes"}});
    put("sounding", "SD-0001",
        {{"station", "ST-0003"},
         {"time", "2025-11-04T12:00+13:00"},
         {"depth_m", "10.6"},
         {"tide_m", "0.8"},
         {"by", "Bram"}});
    put("handover", "H-0001",
        {{"shift", "S-0002"}, {"station", "ST-0003"}, {"next_move", "carry on astern"}, {"said_by", "Bram"}});
    sign_shift(book, {EntryKind::sign, at("18:10"), "Bram", ""}, "S-0002").value();
    return book;
}

}  // namespace

TEST_CASE("a whole shift is logged from the keyboard alone, and is what the command line would write",
          "[barge]") {
    Wheelhouse wheelhouse;
    walk(wheelhouse);
    const Book typed = the_same_by_command();
    for (const char* kind_name :
         {"shift", "crew", "delay", "station", "load", "tally", "trip", "release", "sounding", "handover"}) {
        INFO(kind_name);
        const auto pressed = texts_of(wheelhouse.session.book(), kind_name);
        const auto given = texts_of(typed, kind_name);
        CHECK(pressed == given);
        for (const auto& [label, record] : given) {
            INFO(label);
            REQUIRE(pressed.count(label) == 1);
            CHECK(pressed.at(label) == record);
        }
    }
}

TEST_CASE("through a whole trip the running shift never has to be moved sideways at 1280 px", "[barge]") {
    Wheelhouse w;
    w.window.resize(1076, 600);  // beside the index and the scroll bar of a window 1280 wide
    w.page->setGeometry(w.window.rect());
    const auto fits = [&](const char* after) {
        QTest::qWait(20);
        INFO(after);
        CHECK(w.page->minimumSizeHint().width() <= w.page->width());
    };
    w.press(Qt::Key_F2, "05:40");
    fits("shift opened");
    w.press(Qt::Key_F8, "05:45");
    fits("delay started");
    w.press(Qt::Key_F8, "05:58");
    w.press(Qt::Key_F2, "06:00");
    fits("spuds down");
    w.choose(QStringLiteral("Barge"), QStringLiteral("Te"));
    w.press(Qt::Key_F4, "06:02");
    w.press(Qt::Key_F5, "06:05");
    w.now = at("08:29");
    w.type(QStringLiteral("Dips"), QStringLiteral("0.36 0.38 0.30 0.31"));
    fits("dips");
    w.press(Qt::Key_F6, "08:30");
    fits("full");
    for (const char* clock : {"08:40", "10:05", "10:13", "10:16", "11:50"}) {
        w.press(Qt::Key_F7, clock);
        fits(clock);
    }
}

TEST_CASE("a sheet that lies open takes all keys: the page behind it writes nothing", "[barge]") {
    Wheelhouse w;
    w.press(Qt::Key_F2, "05:40");
    const auto delays = [&] { return texts_of(w.session.book(), "delay").size(); };
    const auto before = delays();
    w.press(Qt::Key_F12, "05:45");  // the shift sheet
    w.press(Qt::Key_F8, "05:46");
    CHECK(delays() == before);
    QTest::keyClick(w.focused(), Qt::Key_Escape);
    w.press(Qt::Key_F8, "05:47");
    CHECK(delays() == before + 1);
}

TEST_CASE("every press can be taken back and brought again", "[barge]") {
    Wheelhouse w;
    w.press(Qt::Key_F2, "05:40");
    w.press(Qt::Key_F2, "06:00");
    CHECK(texts_of(w.session.book(), "station").size() == 2);
    CHECK(w.session.undo().isEmpty());
    CHECK(texts_of(w.session.book(), "station").size() == 1);
    CHECK(w.session.redo().isEmpty());
    CHECK(texts_of(w.session.book(), "station").size() == 2);
}

TEST_CASE("dips outside the barge's table are kept and answered beside the box", "[barge]") {
    Wheelhouse w;
    w.press(Qt::Key_F2, "05:40");
    w.choose(QStringLiteral("Barge"), QStringLiteral("Te"));
    w.press(Qt::Key_F4, "06:00");
    w.type(QStringLiteral("Dips"), QStringLiteral("4.4 4.6"));
    CHECK(texts_of(w.session.book(), "load").at("L-0001").at("dips_m") == "4.4 4.6");
    w.go_to(QStringLiteral("Dips"));
    CHECK(w.focused()->accessibleDescription().startsWith(QStringLiteral("Kept, but it gives no volume")));
    w.type(QStringLiteral("Dips"), QStringLiteral("0.36 metre"));
    w.go_to(QStringLiteral("Dips"));
    CHECK(w.focused()->accessibleDescription().contains(QStringLiteral("0.36 metre")));
    CHECK(texts_of(w.session.book(), "load").at("L-0001").at("dips_m") == "4.4 4.6");
}
