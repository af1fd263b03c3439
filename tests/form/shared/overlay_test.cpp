// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <catch2/catch.hpp>

#include "forms/shared/busy_overlay.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/figure.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/sheet.h"
#include "forms/shared/unit_field.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

struct Under {
    QWidget window;
    QLineEdit* below = new QLineEdit(&window);
    Sheet* sheet = nullptr;

    Under() {
        window.resize(800, 600);
        sheet = new Sheet(&window);
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
        below->setFocus();
    }
    UnitField* lay_field() {
        auto* content = new QWidget;
        auto* all = new QVBoxLayout(content);
        auto* field =
            new UnitField(QStringLiteral("Share released"), {QStringLiteral("%"), 0, 100, 0}, content);
        all->addWidget(field);
        sheet->open(QStringLiteral("Correct trip"), content);
        return field;
    }
};

}  // namespace

TEST_CASE("a sheet takes the keyboard, keeps Tab on itself, and gives the keyboard back", "[sheet]") {
    Under under;
    UnitField* field = under.lay_field();
    CHECK(field->isAncestorOf(QApplication::focusWidget()));
    CHECK(field->findChild<QLineEdit*>()->height() >= 36);
    for (int i = 0; i < 6; ++i) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        CHECK(under.sheet->isAncestorOf(QApplication::focusWidget()));
    }
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    CHECK_FALSE(under.sheet->is_open());
    CHECK(under.below->hasFocus());
}

TEST_CASE("a press beside the sheet neither reaches what lies below nor puts the sheet away", "[sheet]") {
    Under under;
    under.lay_field();
    QTest::mouseClick(under.sheet, Qt::LeftButton, {}, QPoint(20, 20));
    CHECK(under.sheet->is_open());
    CHECK_FALSE(under.below->hasFocus());
}

TEST_CASE("work that takes less than 200 ms shows nothing; longer work covers the page", "[busy]") {
    QWidget window;
    BusyOverlay busy(&window);
    window.show();
    busy.begin(QStringLiteral("Reading"), true);
    CHECK_FALSE(busy.isVisible());
    busy.end();
    QTest::qWait(250);
    CHECK_FALSE(busy.isVisible());
    busy.begin(QStringLiteral("Reading"), true);
    CHECK(QTest::qWaitFor([&] { return busy.isVisible(); }, 1000));
    QSignalSpy stop(&busy, &BusyOverlay::stop_asked);
    auto* button = busy.findChild<QPushButton*>();
    CHECK_FALSE(button->isVisible());
    CHECK(QTest::qWaitFor([&] { return button->isVisible(); }, 3000));
    QTest::mouseClick(button, Qt::LeftButton);
    CHECK(stop.size() == 1);
}

TEST_CASE("a message says its state in words and its button does what it says, once", "[message]") {
    MessageStrip strip;
    int tried = 0;
    strip.show_message(Message::error, QStringLiteral("The disk is full."), QStringLiteral("Try again"),
                       [&] { ++tried; });
    CHECK(strip.accessibleName() == QStringLiteral("hold: The disk is full."));
    for (auto* button : strip.findChildren<QPushButton*>()) {
        if (button->text() == QStringLiteral("Try again")) QTest::mouseClick(button, Qt::LeftButton);
    }
    CHECK(tried == 1);
    CHECK_FALSE(strip.isVisible());
}

TEST_CASE("a cell is chosen only by a person, and a cell that the consent no longer has is kept and told",
          "[choice]") {
    ChoiceField field(QStringLiteral("Cell"));
    QSignalSpy committed(&field, &ChoiceField::committed);
    field.set_choices(
        {{QStringLiteral("7"), QStringLiteral("Cell 7")}, {QStringLiteral("8"), QStringLiteral("Cell 8")}});
    CHECK_FALSE(field.chosen().has_value());
    field.show();
    auto* box = field.findChild<QComboBox*>();
    box->setFocus();
    QTest::keyClick(box, Qt::Key_Down);
    REQUIRE(committed.size() == 1);
    CHECK(field.chosen() == QStringLiteral("7"));
    field.set_chosen(QStringLiteral("12"));
    CHECK(field.chosen() == QStringLiteral("12"));
    CHECK(field.problem().contains(QStringLiteral("12")));
    CHECK(committed.size() == 1);
}

TEST_CASE("a figure is read aloud with unit, uncertainty and basis, and a missing one is not zero",
          "[figure]") {
    Figure figure;
    figure.show_figure({QStringLiteral("Headroom, May"), QStringLiteral("780"), QStringLiteral("m³"),
                        QStringLiteral("420"), QStringLiteral("in-situ, by ullage")});
    CHECK(figure.accessibleName() ==
          QStringLiteral("Headroom, May: 780 m³, plus or minus 420, in-situ, by ullage"));
    figure.show_figure({QStringLiteral("Dry solids"), {}, QStringLiteral("t"), {}, {}});
    CHECK(figure.accessibleName() == QStringLiteral("Dry solids: not known"));
}

TEST_CASE("a button does what it says on Enter as on Space", "[button]") {
    QWidget window;
    auto* button = make_button(ButtonKind::primary, QStringLiteral("Write under this name"), {}, &window);
    int pressed = 0;
    QObject::connect(button, &QPushButton::clicked, [&] { ++pressed; });
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Return);
    QTest::keyClick(button, Qt::Key_Enter);
    QTest::keyClick(button, Qt::Key_Space);
    CHECK(pressed == 3);
}
