// SPDX-License-Identifier: GPL-3.0-or-later
#include <QLineEdit>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/shared/time_field.h"
#include "model/unit/time_text.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

Zone auckland() {
    return Zone::named("Pacific/Auckland").value();
}

Instant at(const char* text) {
    return parse_instant(text, Zone::utc()).value();
}

// The shift of 30 May 2026 was opened at 05:40; it is now 18:00 (NZST, UTC+12).
TimeContext evening() {
    return {auckland(), at("2026-05-30T18:00+12:00"), {}};
}

Instant read(const char* text, const TimeContext& context) {
    const TimeReading reading = time_typed(QString::fromUtf8(text), context);
    INFO(text << ": " << reading.problem.toStdString());
    REQUIRE(reading.at.has_value());
    return *reading.at;
}

}  // namespace

TEST_CASE("a time is read as it is written on a shift sheet", "[time]") {
    const Instant expected = at("2026-05-30T05:40+12:00");
    for (const char* text : {"0540", "540", "05:40", "5:40", "5.40", "5h40", " 05:40 ", "30 0540",
                             "30/5 05:40", "2026-05-30 05:40", "2026-05-30T05:40+12:00", "05:40+12"}) {
        CHECK(read(text, evening()) == expected);
    }
}

TEST_CASE("minutes ago are counted from now", "[time]") {
    CHECK(read("+5", evening()) == at("2026-05-30T17:55+12:00"));
    CHECK(read("now", evening()) == evening().now);
}

TEST_CASE("a bare time later than now was yesterday's", "[time]") {
    CHECK(read("2215", evening()) == at("2026-05-29T22:15+12:00"));
}

TEST_CASE("in a night shift 0540 is the morning after it began", "[time]") {
    TimeContext night = evening();
    night.after = at("2026-05-30T18:00+12:00");
    CHECK(read("0540", night) == at("2026-05-31T05:40+12:00"));
    CHECK(read("1930", night) == at("2026-05-30T19:30+12:00"));
}

TEST_CASE("an hour that clocks skip is refused, one that they show twice is asked for with its offset",
          "[time]") {
    // New Zealand 2025/26: forward over 02:00-03:00 on 28 September 2025, back over 03:00-02:00 on 5 April
    // 2026.
    const TimeContext spring{auckland(), at("2025-09-28T06:00+13:00"), {}};
    CHECK(time_typed(QStringLiteral("02:30"), spring).problem.contains(QStringLiteral("forward")));
    const TimeContext autumn{auckland(), at("2026-04-05T06:00+12:00"), {}};
    const TimeReading twice = time_typed(QStringLiteral("02:30"), autumn);
    CHECK_FALSE(twice.at.has_value());
    CHECK(twice.problem.contains(QStringLiteral("02:30+13")));
    CHECK(twice.problem.contains(QStringLiteral("02:30+12")));
    CHECK(read("02:30+13", autumn) == at("2026-04-04T13:30Z"));
    CHECK(read("02:30+12", autumn) == at("2026-04-04T14:30Z"));
}

TEST_CASE("what is no time is refused with an example", "[time]") {
    for (const char* text : {"25:00", "1261", "31/2 0540", "soon", "-5", "5", "05:40:10:3"}) {
        const TimeReading reading = time_typed(QString::fromUtf8(text), evening());
        INFO(text);
        CHECK_FALSE(reading.at.has_value());
        CHECK(reading.problem.contains(QStringLiteral("0540")));
    }
    CHECK(time_typed(QStringLiteral("  "), evening()).problem.isEmpty());
}

TEST_CASE("a time field shows the day and zone that it took a time for, and keeps what it refused",
          "[time]") {
    QWidget window;
    auto* field = new TimeField(QStringLiteral("Cast off"), evening, &window);
    auto* edit = field->findChild<QLineEdit*>();
    auto* next = new QLineEdit(&window);
    std::vector<std::optional<Instant>> committed;
    QObject::connect(field, &TimeField::committed, &window, [&](auto value) { committed.push_back(value); });
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    field->setFocus();
    QTest::keyClicks(edit, QStringLiteral("2570"));
    next->setFocus();
    CHECK(field->text() == QStringLiteral("2570"));
    CHECK_FALSE(field->problem().isEmpty());
    CHECK(committed.empty());
    field->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, QStringLiteral("1642"));
    QTest::keyClick(edit, Qt::Key_Return);
    CHECK(field->text() == QStringLiteral("16:42"));
    REQUIRE(committed.size() == 1);
    CHECK(committed[0] == at("2026-05-30T16:42+12:00"));
    CHECK(day_and_time_shown(*committed[0], auckland()) == QStringLiteral("Sat 30 May 2026, 16:42 UTC+12"));
}
