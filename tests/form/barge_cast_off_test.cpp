// SPDX-License-Identifier: GPL-3.0-or-later
// A load that is cast off before it is closed: it goes, and what it lacks is told.
#include "forms/barge/press_button.h"
#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// Not full yet.
struct HalfFull : Alongside {
    const form::PressButton& cast_off() {
        for (const auto* button : w.page->findChildren<form::PressButton*>())
            if (button->isVisible() && button->accessibleName() == QStringLiteral("Cast off")) return *button;
        FAIL("no press to cast off");
        throw std::logic_error("not reached");
    }
};

}  // namespace

TEST_CASE("F7 on a load that is not closed casts off, and says what the load lacks", "[barge]") {
    HalfFull b;
    CHECK(b.cast_off().accessibleDescription() == QStringLiteral("L-0001, not full"));
    b.w.press(Qt::Key_F7, "08:40");
    REQUIRE(b.count("trip") == 1);
    CHECK(b.said.contains(QStringLiteral("L-0001 not closed: no end of loading, no reading of how much")));
}

TEST_CASE("F7 on a load that is full, of which nothing tells how much, says that alone", "[barge]") {
    HalfFull b;
    b.w.press(Qt::Key_F6, "08:30");
    CHECK(b.cast_off().accessibleDescription() == QStringLiteral("load L-0001"));
    b.w.press(Qt::Key_F7, "08:40");
    REQUIRE(b.count("trip") == 1);
    CHECK(b.said.contains(QStringLiteral("not closed: no reading of how much is in her.")));
}

TEST_CASE("F7 on a load that is closed says nothing", "[barge]") {
    HalfFull b;
    b.w.now = at("08:29");
    b.w.type(QStringLiteral("Dips"), QStringLiteral("0.36 0.38 0.30 0.31"));
    b.w.press(Qt::Key_F6, "08:30");
    b.w.press(Qt::Key_F7, "08:40");
    REQUIRE(b.count("trip") == 1);
    CHECK(b.said.isEmpty());
}
