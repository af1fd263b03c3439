// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QApplication>
#include <QPushButton>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/barge/shift_page.h"
#include "tests/form/barge_a_book.h"

namespace spoilbook::tests {

/// One person at the keyboard of the wheelhouse laptop, with a clock that stands where it is put.
struct Wheelhouse {
    Instant now = at("05:40");
    form::BookSession session;
    std::unique_ptr<form::Receiver> receiver;
    QWidget window;
    form::ShiftPage* page = nullptr;

    explicit Wheelhouse(Book book = a_barge_book(),
                        const std::optional<form::ReceiverSettings>& heard = std::nullopt)
        : session(
              std::move(book), [this] { return now; }, QString()) {
        session.set_person(QStringLiteral("Bram"));
        window.resize(1060, 640);
        if (heard)
            receiver = std::make_unique<form::Receiver>([this] { return now; }, *heard, nullptr, nullptr);
        page = new form::ShiftPage(session, &window, receiver.get());
        page->setGeometry(window.rect());
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    QWidget* focused() {
        QWidget* at = QApplication::focusWidget();
        return at ? at : &window;
    }
    void press(Qt::Key key, const std::string& clock) {
        now = at(clock);
        QTest::keyClick(focused(), key);
    }
    /// Goes to a box by Tab alone.
    void go_to(const QString& name) {
        for (int i = 0; i < 200; ++i) {
            QWidget* box = QApplication::focusWidget();
            if (box && !qobject_cast<QPushButton*>(box) && box->accessibleName().startsWith(name)) return;
            QTest::keyClick(focused(), Qt::Key_Tab);
        }
        FAIL("Tab does not reach " << name.toStdString());
    }
    void type(const QString& name, const QString& text) {
        go_to(name);
        QTest::keyClick(focused(), Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(focused(), text);
        QTest::keyClick(focused(), Qt::Key_Tab);
    }
    /// As in a list of a paper form: its first letters.
    void choose(const QString& name, const QString& letters) {
        go_to(name);
        QTest::keyClicks(focused(), letters);
    }
};

/// A barge alongside that waits for her first bucket, and what the strip above the sheet says.
struct Alongside {
    Wheelhouse w;
    QString said;

    Alongside() {
        QObject::connect(&w.session, &form::Session::notice, &w.window,
                         [this](const QString& what) { said = what; });
        w.press(Qt::Key_F2, "05:40");
        w.press(Qt::Key_F2, "06:00");
        w.choose(QStringLiteral("Barge"), QStringLiteral("Te"));
        w.press(Qt::Key_F4, "06:02");
    }
    std::size_t count(const char* kind_name) { return texts_of(w.session.book(), kind_name).size(); }
};

}  // namespace spoilbook::tests
