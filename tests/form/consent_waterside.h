// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>
#include <QPushButton>
#include <QTabWidget>
#include <QTest>

#include "forms/consent/turbidity_leaf.h"
#include "forms/shared/table_view.h"
#include "tests/form/works_sample_desk.h"
#include "tests/support/watched_harbour.h"

namespace spoilbook::tests {

using namespace spoilbook::form;

/// Ten-minute readings of ten days: 8 NTU with a ripple, and 30 for six hours from noon of the fourth day.
inline std::vector<LoggerReading> ten_days(bool impact) {
    std::vector<LoggerReading> readings;
    for (int i = 0; i < 10 * 144; ++i) {
        const bool murky = impact && i >= 3 * 144 + 72 && i < 3 * 144 + 108;
        readings.push_back({logger_start + i * 10 * ms_per_minute, (murky ? 30.0 : 8.0) + i % 7 * 0.1});
    }
    return readings;
}

inline Instant a_fortnight_on() {
    return logger_start + 14 * ms_per_day;
}

struct Waterside {
    WatchedHarbour harbour{ten_days(true), ten_days(false)};
    BookSession session{std::move(harbour.book), a_fortnight_on, {}};
    FiguresSource figures{session};
    TurbidityLeaf page{figures, harbour.file("kept")};
    TurbidityChart* chart = page.findChild<TurbidityChart*>();

    Waterside() {
        session.set_person(QStringLiteral("Ana"));
        page.resize(1080, 720);
        page.show();
        REQUIRE(QTest::qWaitForWindowActive(&page));
        REQUIRE(
            QTest::qWaitFor([&] { return chart->drawn().events.size() == 1 && seen() > 0; }, patience_ms));
    }
    [[nodiscard]] std::size_t seen() const {
        return chart->drawn().view.sites.empty() ? 0 : chart->drawn().view.sites.front().readings;
    }
    [[nodiscard]] bool comes_to(Period window) const {
        return QTest::qWaitFor([&] { return chart->drawn().view.window == window; }, patience_ms);
    }
    template <class W>
    [[nodiscard]] W* comes_up() {
        static_cast<void>(QTest::qWaitFor([&] { return page.findChild<W*>() != nullptr; }, patience_ms));
        return page.findChild<W*>();
    }
    [[nodiscard]] TableView* table(int tab) {
        auto* tabs = page.findChild<QTabWidget*>();
        tabs->setCurrentIndex(tab);
        return tabs->widget(tab)->findChild<TableView*>() ? tabs->widget(tab)->findChild<TableView*>()
                                                          : qobject_cast<TableView*>(tabs->widget(tab));
    }
};

inline void type_into(QWidget* sheet, const char* label, const char* text) {
    for (auto* edit : sheet->findChildren<QLineEdit*>()) {
        if (edit->accessibleName() != QString::fromLatin1(label)) continue;
        edit->setFocus();
        QTest::keyClick(edit, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClicks(edit, QString::fromUtf8(text));
        QTest::keyClick(edit, Qt::Key_Return);
        return;
    }
    FAIL("no box " << label);
}

inline void press(QWidget* sheet, const char* text) {
    for (auto* button : sheet->findChildren<QPushButton*>()) {
        if (button->text() != QString::fromUtf8(text)) continue;
        button->setFocus();
        QTest::keyClick(button, Qt::Key_Space);
        return;
    }
    FAIL("no button " << text);
}

}  // namespace spoilbook::tests
