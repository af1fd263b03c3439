// SPDX-License-Identifier: GPL-3.0-or-later
// A load that is cast off before it is closed: it goes, and what it lacks is told.
#include "forms/barge/press_button.h"
#include "tests/form/barge_wheelhouse.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

/// A barge alongside that takes her first bucket, and what the strip above the sheet says.
struct HalfFull {
    Wheelhouse w;
    QString said;
    HalfFull() {
        QObject::connect(&w.session, &form::Session::notice, &w.window,
                         [this](const QString& what) { said = what; });
        w.press(Qt::Key_F2, "05:40");
        w.press(Qt::Key_F2, "06:00");
        w.choose(QStringLiteral("Barge"), QStringLiteral("Te"));
        w.press(Qt::Key_F4, "06:02");
    }
    const form::PressButton& cast_off() {
        for (const auto* button : w.page->findChildren<form::PressButton*>())
            if (button->isVisible() && button->accessibleName() == QStringLiteral("Cast off")) return *button;
        FAIL("no press to cast off");
        throw std::logic_error("not reached");
    }
    std::size_t trips() { return texts_of(w.session.book(), "trip").size(); }
};

}  // namespace

TEST_CASE("F7 on a load that is not closed casts off, and says what the load lacks", "[barge]") {
    HalfFull b;
    CHECK(b.cast_off().accessibleDescription() == QStringLiteral("L-0001, not full"));
    b.w.press(Qt::Key_F7, "08:40");
    REQUIRE(b.trips() == 1);
    CHECK(b.said.contains(QStringLiteral("L-0001 not closed: no end of loading, no reading of how much")));
}

TEST_CASE("F7 on a load that is full, of which nothing tells how much, says that alone", "[barge]") {
    HalfFull b;
    b.w.press(Qt::Key_F6, "08:30");
    CHECK(b.cast_off().accessibleDescription() == QStringLiteral("load L-0001"));
    b.w.press(Qt::Key_F7, "08:40");
    REQUIRE(b.trips() == 1);
    CHECK(b.said.contains(QStringLiteral("not closed: no reading of how much is in her.")));
}

TEST_CASE("F7 on a load that is closed says nothing", "[barge]") {
    HalfFull b;
    b.w.now = at("08:29");
    b.w.type(QStringLiteral("Dips"), QStringLiteral("0.36 0.38 0.30 0.31"));
    b.w.press(Qt::Key_F6, "08:30");
    b.w.press(Qt::Key_F7, "08:40");
    REQUIRE(b.trips() == 1);
    CHECK(b.said.isEmpty());
}
