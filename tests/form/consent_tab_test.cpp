// SPDX-License-Identifier: GPL-3.0-or-later
// The Tab key in the condition editor: every blank, in the order of reading.
#include <QApplication>
#include <algorithm>

#include "forms/consent/condition_editor.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/text_field.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

/// Goes through the list with the arrow keys until the words stand there. The boxes are made anew on the way.
void pick(const QWidget& page, const char* name, const char* words) {
    for (int presses = 0; presses < 40; ++presses) {
        QComboBox* list = nullptr;
        const auto there = [&] {
            for (auto* one : page.findChildren<QComboBox*>())
                if (one->isVisible() && one->accessibleName() == QString::fromUtf8(name)) list = one;
            return list != nullptr;
        };
        REQUIRE(QTest::qWaitFor(there, 5000));
        const int place = list->findText(QString::fromUtf8(words));
        REQUIRE(place >= 0);
        if (list->currentIndex() == place) return;
        list->setFocus();
        QTest::keyClick(list, list->currentIndex() < place ? Qt::Key_Down : Qt::Key_Up);
        QTest::qWait(20);
    }
    FAIL("not reached: " << words);
}

}  // namespace

namespace {

/// The boxes of the sentence that are seen, as they are read: row by row, from the left.
std::vector<QWidget*> as_read(const QWidget& page) {
    struct Seen {
        QPoint at;
        QWidget* editor;
    };
    std::vector<Seen> seen;
    for (FieldBox* field : page.findChildren<FieldBox*>()) {
        if (!field->isVisible() || field->focusProxy() == nullptr) continue;
        seen.push_back({field->mapTo(&page, QPoint()), field->focusProxy()});
    }
    std::sort(seen.begin(), seen.end(), [](const Seen& a, const Seen& b) {
        return std::pair(a.at.y(), a.at.x()) < std::pair(b.at.y(), b.at.x());
    });
    std::vector<QWidget*> order;
    for (const Seen& one : seen)
        order.push_back(one.editor);
    return order;
}

/// The same boxes as the Tab key comes to them, once round from the first.
std::vector<QWidget*> by_tab(const std::vector<QWidget*>& boxes) {
    std::vector<QWidget*> order;
    boxes.front()->setFocus();
    for (std::size_t presses = 0; presses < 3 * boxes.size() + 20; ++presses) {
        QWidget* at = QApplication::focusWidget();
        const bool is_box = std::find(boxes.begin(), boxes.end(), at) != boxes.end();
        if (is_box && !order.empty() && at == order.front()) break;
        if (is_box) order.push_back(at);
        QTest::keyClick(at, Qt::Key_Tab);
    }
    return order;
}

QStringList names_of(const std::vector<QWidget*>& boxes) {
    QStringList names;
    for (const QWidget* one : boxes)
        names << one->accessibleName();
    return names;
}

}  // namespace

TEST_CASE("Tab comes to every blank in the order of reading, whatever the kind and what is chosen in it",
          "[consent]") {
    SampleDesk desk;
    ConditionEditor editor(desk.session, nullptr);
    editor.resize(1080, 760);
    editor.show();
    REQUIRE(QTest::qWaitForWindowActive(&editor));
    const auto check = [&](const char* what) {
        // Where a box lies is settled some events after it was made: on a busy machine later than one waits.
        std::string by_key, by_eye;
        CHECK(QTest::qWaitFor([&] {
            const auto boxes = as_read(editor);
            by_key = names_of(by_tab(boxes)).join(u'|').toStdString();
            by_eye = names_of(boxes).join(u'|').toStdString();
            return by_key == by_eye;
        }));
        INFO(what);
        CHECK(by_key == by_eye);
    };
    for (const char* kind :
         {"place: inside or outside something", "time: when it is forbidden or allowed",
          "series: readings against a level", "duty: something is due", "quantity: so much in a time"}) {
        pick(editor, "Kind of condition", kind);
        check(kind);
    }
    pick(editor, "window", "in any");
    check("a rolling window");
    pick(editor, "an amount or a share", "the share of");
    check("a share");
    pick(editor, "method", "ullage alone");
    check("a method");
}
