// SPDX-License-Identifier: GPL-3.0-or-later
// A key that two presses share goes to the one that is seen: the window has sheets over sheets.
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <catch2/catch.hpp>

#include "forms/barge/press_button.h"
#include "forms/shared/sheet.h"

using namespace spoilbook::form;

namespace {

/// A page with a sheet of its own, below the sheet of the window: as the desk lies under "Who writes".
struct Window {
    QWidget all;
    QWidget* page = new QWidget(&all);
    Sheet* upper = new Sheet(&all);
    Sheet* lower = new Sheet(page);
    PressButton* on_page = press(page);

    Window() {
        all.resize(800, 600);
        page->setGeometry(all.rect());
        all.show();
        REQUIRE(QTest::qWaitForWindowActive(&all));
    }
    static PressButton* press(QWidget* parent) {
        return new PressButton(QStringLiteral("Full"), QStringLiteral("check"), Qt::Key_F6, parent);
    }
    static PressButton* lay(Sheet* sheet) {
        auto* content = new QWidget;
        auto* rows = new QVBoxLayout(content);
        PressButton* button = press(content);
        rows->addWidget(button);
        sheet->open(QStringLiteral("A sheet"), content);
        return button;
    }
    void key() { QTest::keyClick(&all, Qt::Key_F6); }
};

}  // namespace

TEST_CASE("a sheet below another one does not hear a function key, and hears it when that one goes",
          "[barge]") {
    Window window;
    PressButton* below = Window::lay(window.lower);
    auto* names = new QWidget;
    window.upper->open(QStringLiteral("Who writes"), names);
    const QSignalSpy page_heard(window.on_page, &QPushButton::clicked);
    const QSignalSpy below_heard(below, &QPushButton::clicked);
    window.key();
    CHECK(page_heard.empty());
    CHECK(below_heard.empty());
    window.upper->close_sheet();
    window.on_page->hear_key(false);  // as the desk does while its sheet lies there
    window.key();
    CHECK(page_heard.empty());
    CHECK(below_heard.size() == 1);
}

TEST_CASE("the sheet on top hears its key over an open one below it", "[barge]") {
    Window window;
    PressButton* below = Window::lay(window.lower);
    PressButton* on_top = Window::lay(window.upper);
    below->hear_key(false);
    window.on_page->hear_key(false);
    const QSignalSpy heard(on_top, &QPushButton::clicked);
    window.key();
    CHECK(heard.size() == 1);
    CHECK_FALSE(window.upper->covers(on_top));
    CHECK(window.upper->covers(below));
    CHECK_FALSE(window.lower->covers(on_top));
}
