// SPDX-License-Identifier: GPL-3.0-or-later
// A glove presses twice, or lies on a key: one step is logged.
#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// Ready to cast off.
struct FullBarge : Alongside {
    FullBarge() {
        w.press(Qt::Key_F5, "06:05");
        w.press(Qt::Key_F6, "08:30");
    }
};

}  // namespace

TEST_CASE("a second F7 at once logs no second step and says what was logged", "[barge]") {
    FullBarge b;
    b.w.press(Qt::Key_F7, "08:40:00");
    b.w.press(Qt::Key_F7, "08:40:01");
    CHECK(b.count("trip") == 1);
    CHECK(b.count("release") == 0);
    CHECK(b.said.contains(QStringLiteral("08:40: cast off")));
    CHECK(b.said.contains(QStringLiteral("press again")));
    b.said.clear();
    b.w.press(Qt::Key_F7, "08:40:02");
    CHECK(b.count("release") == 1);
    CHECK(b.said.isEmpty());
}

TEST_CASE("a step that was taken back at once can be pressed again at once", "[barge]") {
    FullBarge b;
    b.w.press(Qt::Key_F7, "08:40:00");
    REQUIRE(b.count("trip") == 1);
    CHECK(b.w.session.undo().isEmpty());
    REQUIRE(b.count("trip") == 0);
    b.w.press(Qt::Key_F7, "08:40:01");
    CHECK(b.count("trip") == 1);
    CHECK(b.said.isEmpty());
}

TEST_CASE("a clock that was set back holds no press up", "[barge]") {
    FullBarge b;
    b.w.press(Qt::Key_F8, "08:40:00");
    b.w.press(Qt::Key_F8, "08:30:00");
    CHECK(b.said.isEmpty());
}

TEST_CASE("another key is not held up by the one before it", "[barge]") {
    FullBarge b;
    b.w.press(Qt::Key_F7, "08:40:00");
    b.w.press(Qt::Key_F8, "08:40:01");
    CHECK(b.count("trip") == 1);
    CHECK(b.count("delay") == 1);
    CHECK(b.said.isEmpty());
}

TEST_CASE("two F8, two F2 and two F3 at once are one each", "[barge]") {
    FullBarge b;
    b.w.press(Qt::Key_F8, "08:40:00");
    b.w.press(Qt::Key_F8, "08:40:01");
    REQUIRE(b.count("delay") == 1);
    CHECK(texts_of(b.w.session.book(), "delay").begin()->second.count("end") == 0);
    const auto before = b.count("station");
    b.w.press(Qt::Key_F3, "08:41:00");
    b.w.press(Qt::Key_F3, "08:41:01");
    CHECK(b.count("station") == before + 1);
    b.w.press(Qt::Key_F2, "08:50:00");
    b.w.press(Qt::Key_F2, "08:50:01");
    CHECK(b.count("station") == before + 1);
    b.w.press(Qt::Key_F2, "08:50:02");
    CHECK(b.count("station") == before + 2);
}

TEST_CASE("buckets are counted as fast as they are pressed, but not by a key that is held", "[barge]") {
    FullBarge b;
    const auto buckets = [&] {
        double sum = 0;
        for (const auto& [label, tally] : texts_of(b.w.session.book(), "tally"))
            sum += std::stod(tally.at("count"));
        return sum;
    };
    b.w.choose(QStringLiteral("Barge"), QStringLiteral("Te"));
    b.w.press(Qt::Key_F4, "08:42");
    const double before = buckets();
    b.w.press(Qt::Key_F5, "08:45:00");
    b.w.press(Qt::Key_F5, "08:45:01");
    CHECK(buckets() == before + 2);
    // The keyboard repeats a key that is held down: the same key again, marked as repeated.
    for (int i = 0; i < 5; ++i)
        QTest::simulateEvent(b.w.window.windowHandle(), true, Qt::Key_F5, Qt::NoModifier, {}, true);
    CHECK(buckets() == before + 2);
    for (int i = 0; i < 5; ++i)
        QTest::simulateEvent(b.w.window.windowHandle(), true, Qt::Key_F7, Qt::NoModifier, {}, true);
    CHECK(b.count("trip") == 0);
    QTest::simulateEvent(b.w.window.windowHandle(), true, Qt::Key_F7, Qt::NoModifier, {}, false);
    CHECK(b.count("trip") == 1);
}
