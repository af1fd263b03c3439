// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/unit_field.h"

#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <catch2/catch.hpp>

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

// A field in a window with something to go to when it is left.
struct Form {
    QWidget window;
    UnitField* field;
    QLineEdit* edit;
    QLineEdit* next;
    std::vector<std::optional<double>> committed;

    explicit Form(UnitRule rule) {
        field = new UnitField(QStringLiteral("Ullage, forward port"), std::move(rule), &window);
        edit = field->findChild<QLineEdit*>();
        next = new QLineEdit(&window);
        QObject::connect(field, &UnitField::committed, &window,
                         [this](auto value) { committed.push_back(value); });
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
        field->setFocus();
    }
    void type(const char* keys) { QTest::keyClicks(edit, QString::fromUtf8(keys)); }
    void leave() { next->setFocus(); }
    QPushButton* button(const char* text) {
        for (auto* b : field->findChildren<QPushButton*>()) {
            if (b->text() == QString::fromUtf8(text)) return b;
        }
        return nullptr;
    }
};

UnitRule ullage() {
    return {QStringLiteral("m"), 0, 50, 2};
}

UnitRule tow() {
    return {QStringLiteral("min"), 0, 2880, 0, true, [](double v) {
                return v < 30 ? QStringLiteral("44 knots. Is it so?") : QString();
            }};
}

}  // namespace

TEST_CASE("a dip is written down when its box is left, once", "[field]") {
    Form form(ullage());
    form.type("1.36");
    CHECK(form.committed.empty());
    QTest::keyClick(form.edit, Qt::Key_Return);
    form.leave();
    REQUIRE(form.committed.size() == 1);
    CHECK(form.committed[0] == 1.36);
    CHECK(form.field->problem().isEmpty());
}

TEST_CASE("what is not a number stays as it was typed, with what would be right", "[field]") {
    Form form(ullage());
    form.type("1,3x");
    form.leave();
    CHECK(form.field->text() == QStringLiteral("1,3x"));
    CHECK(form.field->problem().contains(QStringLiteral("1,3x")));
    CHECK(form.edit->accessibleDescription() == form.field->problem());
    CHECK(form.committed.empty());
    // Going back and away again says the same and loses nothing.
    form.field->setFocus();
    form.leave();
    CHECK(form.field->text() == QStringLiteral("1,3x"));
    CHECK_FALSE(form.field->problem().isEmpty());
}

TEST_CASE("a dip of 136 m is refused with its range, and the mended one is taken", "[field]") {
    Form form(ullage());
    form.type("136");
    form.leave();
    CHECK(form.field->problem().contains(QStringLiteral("between 0.00 and 50.00 m")));
    form.field->setFocus();
    QTest::keyClick(form.edit, Qt::Key_Home);
    for (int i = 0; i < 3; ++i)
        QTest::keyClick(form.edit, Qt::Key_Delete);
    form.type("1.36");
    form.leave();
    CHECK(form.field->problem().isEmpty());
    REQUIRE(form.committed.size() == 1);
    CHECK(form.committed[0] == 1.36);
}

TEST_CASE("an odd tow is written down and asked about once", "[field]") {
    Form form(tow());
    int kept = 0;
    QObject::connect(form.field, &UnitField::odd_kept, &form.window, [&kept] { ++kept; });
    form.type("10");
    form.leave();
    REQUIRE(form.committed.size() == 1);
    CHECK(form.field->asking());
    QTest::mouseClick(form.button("It is so"), Qt::LeftButton);
    CHECK(kept == 1);
    CHECK_FALSE(form.field->asking());
    form.field->setFocus();
    form.leave();
    CHECK_FALSE(form.field->asking());
    CHECK(form.committed.size() == 1);
}

TEST_CASE("mending an odd value leads back into the box", "[field]") {
    Form form(tow());
    form.type("10");
    form.leave();
    QTest::mouseClick(form.button("Mend it"), Qt::LeftButton);
    CHECK(form.edit->hasFocus());
    CHECK(form.field->text() == QStringLiteral("10"));
}

TEST_CASE("an offered wave height is taken by one press and never by itself", "[field]") {
    Form form({QStringLiteral("m"), 0, 30, 1});
    form.field->offer(0.8, QStringLiteral("buoy"));
    form.leave();
    CHECK(form.committed.empty());
    CHECK(form.field->text().isEmpty());
    QTest::mouseClick(form.button("0.8 m · buoy"), Qt::LeftButton);
    REQUIRE(form.committed.size() == 1);
    CHECK(form.committed[0] == 0.8);
}

TEST_CASE("a blank box is nothing recorded, never zero", "[field]") {
    Form form(ullage());
    form.field->set_value(1.2);
    form.edit->selectAll();
    QTest::keyClick(form.edit, Qt::Key_Delete);
    form.leave();
    REQUIRE(form.committed.size() == 1);
    CHECK_FALSE(form.committed[0].has_value());
}

TEST_CASE("a box that must be filled says so", "[field]") {
    UnitRule rule = ullage();
    rule.may_be_blank = false;
    Form form(rule);
    form.type("x");
    form.leave();
    form.field->setFocus();
    form.edit->selectAll();
    QTest::keyClick(form.edit, Qt::Key_Delete);
    form.leave();
    CHECK(form.field->problem().contains(QStringLiteral("needed")));
}
