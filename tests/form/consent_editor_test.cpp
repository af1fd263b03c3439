// SPDX-License-Identifier: GPL-3.0-or-later
// A condition is written as an officer does it: with the keyboard, blank by blank.
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QSignalSpy>

#include "forms/consent/condition_editor.h"
#include "forms/shared/field.h"
#include "model/book/season.h"
#include "model/consent/sentence.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

const QLocale nz(QLocale::English, QLocale::NewZealand);

/// The sample book, to be written in.
struct Office {
    QTemporaryDir folder;
    BookSession session;
    Office() : session(std::move(*opened(folder)), end_of_may, {}) {
        session.set_person(QStringLiteral("Moana"));
    }
    static Checked<Book> opened(const QTemporaryDir& folder) {
        const QString path = folder.filePath(QStringLiteral("m.sbook"));
        QFile::copy(QString::fromStdString(sample_book()), path);
        QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
        return Book::open_to_write(path.toStdString(), "test",
                                   {EntryKind::change, end_of_may(), "Moana", {}});
    }
    std::vector<Condition> versions(const std::string& number) const {
        std::vector<Condition> found;
        for (const Condition& condition : session.season().conditions.rows()) {
            if (condition.condition == number) found.push_back(condition);
        }
        return found;
    }
    const Condition* condition(const std::string& number) const {
        for (const Condition& one : session.season().conditions.rows()) {
            if (one.condition == number) return &one;
        }
        return nullptr;
    }
};

template <class W>
W* box(const QWidget& page, const char* name) {
    W* found = nullptr;
    // Blanks are made anew where a choice asks for others; they show with the next event.
    const bool there = QTest::qWaitFor(
        [&] {
            for (W* one : page.findChildren<W*>()) {
                if (one->isVisible() && one->accessibleName() == QString::fromUtf8(name)) found = one;
            }
            return found != nullptr;
        },
        5000);
    INFO("no box " << name);
    REQUIRE(there);
    return found;
}

void type(const QWidget& page, const char* name, const char* text) {
    auto* edit = box<QLineEdit>(page, name);
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, QString::fromUtf8(text));
    QTest::keyClick(edit, Qt::Key_Return);
}

/// Goes through the list with the arrow keys until the words stand there. The boxes are made anew on the way.
void pick(const QWidget& page, const char* name, const char* words) {
    const QString wanted = QString::fromUtf8(words);
    for (int presses = 0; presses < 20; ++presses) {
        auto* list = box<QComboBox>(page, name);
        if (list->currentText() == wanted && list->currentIndex() >= 0) return;
        const int place = list->findText(wanted);
        REQUIRE(place >= 0);
        list->setFocus();
        QTest::keyClick(list, list->currentIndex() < place ? Qt::Key_Down : Qt::Key_Up);
        QTest::qWait(20);
    }
    FAIL("not reached: " << words);
}

void press(const QWidget& page, const char* words) {
    for (auto* button : page.findChildren<QPushButton*>()) {
        if (button->isVisible() && button->text() == QString::fromUtf8(words)) {
            button->setFocus();
            return QTest::keyClick(button, Qt::Key_Space);
        }
    }
    FAIL("no button " << words);
}

/// What stands below the box of this name.
QString problem_of(const QWidget& page, const char* name) {
    for (const FieldBox* field : page.findChildren<FieldBox*>()) {
        if (field->isVisible() && field->label() == QString::fromUtf8(name)) return field->problem();
    }
    FAIL("no box " << name);
    return {};
}

bool has_problem(const QWidget& page, const char* words) {
    for (const FieldBox* field : page.findChildren<FieldBox*>()) {
        if (field->isVisible() && field->problem().contains(QString::fromUtf8(words))) return true;
    }
    return false;
}

/// In a window of its own, with that kind chosen.
void begin(ConditionEditor& editor, const char* kind_words) {
    editor.resize(1080, 760);
    editor.show();
    REQUIRE(QTest::qWaitForWindowActive(&editor));
    pick(editor, "Kind of condition", kind_words);
}

/// The box that the keyboard is in.
const FieldBox* box_in_use() {
    const QWidget* at = QApplication::focusWidget();
    while (at != nullptr && qobject_cast<const FieldBox*>(at) == nullptr)
        at = at->parentWidget();
    REQUIRE(at != nullptr);
    return static_cast<const FieldBox*>(at);
}

}  // namespace

TEST_CASE("a limit is written blank by blank, read, and stands in the book", "[consent]") {
    Office office;
    ConditionEditor editor(office.session, nullptr);
    editor.resize(1080, 760);
    editor.show();
    REQUIRE(QTest::qWaitForWindowActive(&editor));
    QSignalSpy written(&editor, &ConditionEditor::written);
    pick(editor, "Kind of condition", "quantity: so much in a time");
    type(editor, "number as printed", "40");
    type(editor, "how much", "215000");
    pick(editor, "measure", "m³ in situ");
    pick(editor, "window", "in any");
    type(editor, "how many", "12");
    press(editor, "Write it down");
    CHECK(problem_of(editor, "days, weeks, months or years").contains(QStringLiteral("not filled yet")));
    CHECK(problem_of(editor, "number as printed").isEmpty());
    CHECK(box<QComboBox>(editor, "days, weeks, months or years")->hasFocus());
    CHECK(written.isEmpty());
    pick(editor, "days, weeks, months or years", "months");
    type(editor, "grounds; blank: any", "Ganet Patch");
    CHECK(has_problem(editor, "Gannet Patch"));
    type(editor, "grounds; blank: any", "Gannet Patch");
    CHECK(says(editor, QStringLiteral(
                           "No more than 215 000 m³ in situ in any 12 months, counted at release, at Gannet "
                           "Patch.")));
    CHECK(says(editor, QStringLiteral("In force from …")));
    press(editor, "Write it down");
    CHECK(written.isEmpty());
    CHECK(problem_of(editor, "its first day, 2026-07-01")
              .contains(QStringLiteral("Say from when it is in force")));
    CHECK(box<QLineEdit>(editor, "its first day, 2026-07-01")->hasFocus());
    type(editor, "its first day, 2026-07-01", "2026-07-01");
    CHECK(says(editor, QStringLiteral("In force from 2026-07-01")));
    CHECK_FALSE(says(editor, QStringLiteral("In force from …")));
    press(editor, "Write it down");
    CHECK(written.size() == 1);
    const Condition* made = office.condition("40");
    REQUIRE(made != nullptr);
    CHECK(made->from == *parse_instant("2026-07-01T00:00+12:00", Zone::utc()));
    CHECK(condition_sentence(*made) ==
          "No more than 215 000 m³ in situ in any 12 months, counted at release, at Gannet Patch.");
}

TEST_CASE("a condition in force is changed by a new version with a reason, and the old one ends",
          "[consent]") {
    Office office;
    const Condition before = *office.condition("5");
    ConditionEditor editor(office.session, &before);
    editor.resize(1080, 760);
    editor.show();
    REQUIRE(QTest::qWaitForWindowActive(&editor));
    type(editor, "how much", "24 000");
    press(editor, "Write the new version down");
    CHECK(says(editor, QStringLiteral("say from when it is in force")));
    type(editor, "its first day, 2026-07-01", "2026-07-01");
    press(editor, "Write the new version down");
    CHECK(has_problem(editor, "without a reason"));
    CHECK(office.versions("5").size() == 1);
    type(editor, "Why it changes", "letter 431");
    press(editor, "Write the new version down");
    const auto versions = office.versions("5");
    REQUIRE(versions.size() == 2);
    const Instant july = *parse_instant("2026-07-01T00:00+12:00", Zone::utc());
    CHECK(versions[0].to == july);
    CHECK(versions[0].body == before.body);
    CHECK(versions[1].from == july);
    CHECK(condition_sentence(versions[1]).find("24 000") != std::string::npos);
}

TEST_CASE("what is wrong is said beside its blank and stays as typed", "[consent]") {
    Office office;
    ConditionEditor editor(office.session, office.condition("11"));
    editor.resize(1080, 760);
    editor.show();
    REQUIRE(QTest::qWaitForWindowActive(&editor));
    type(editor, "m from the line", "twenty");
    CHECK(has_problem(editor, "\"twenty\" stands here; m from the line is a number"));
    CHECK(box<QLineEdit>(editor, "m from the line")->text() == QStringLiteral("twenty"));
    type(editor, "m from the line", "-3");
    CHECK(has_problem(editor, "3"));
    type(editor, "m from the line", "30");
    CHECK_FALSE(has_problem(editor, "3"));
    CHECK(says(editor, QStringLiteral("30 m or more from its line")));
}

TEST_CASE("every blank of every condition of the sample holds what the book does", "[consent]") {
    Office office;
    const Zone zone = office.session.zone();
    for (const Condition& condition : office.session.season().conditions.rows()) {
        ConditionEditor editor(office.session, &condition);
        QSignalSpy asked(&editor, &ConditionEditor::trial_asked);
        editor.show();
        type(editor, "its first day, 2026-07-01", "2026-07-01");
        press(editor, "Try it");
        INFO(condition.condition);
        REQUIRE(asked.size() == 1);
        CHECK(nlohmann::json::parse(editor.tried().body) == nlohmann::json::parse(condition.body));
    }
}

TEST_CASE(
    "what is needed and not filled is said at its blank, whatever the kind, and the keyboard goes there",
    "[consent]") {
    Office office;
    const std::pair<const char*, const char*> first_of[] = {
        {"quantity: so much in a time", "an amount or a share"},
        {"place: inside or outside something", "inside or outside"},
        {"series: readings against a level", ""},
        {"duty: something is due", ""},
    };
    for (const auto& [kind_words, first] : first_of) {
        INFO(kind_words);
        ConditionEditor editor(office.session, nullptr);
        begin(editor, kind_words);
        type(editor, "number as printed", "40");
        press(editor, "Write it down");
        CHECK(problem_of(editor, "number as printed").isEmpty());
        const FieldBox* field = box_in_use();
        INFO(field->label().toStdString());
        CHECK_FALSE(field->problem().isEmpty());
        if (*first) CHECK(field->label() == QString::fromUtf8(first));
    }
}

TEST_CASE("a number that is not given is asked for at its own blank", "[consent]") {
    Office office;
    ConditionEditor editor(office.session, nullptr);
    begin(editor, "quantity: so much in a time");
    type(editor, "how much", "215000");
    press(editor, "Write it down");
    CHECK_FALSE(problem_of(editor, "number as printed").isEmpty());
}

TEST_CASE("a list in per cent and a choice of one member are kept as consents.json has them", "[consent]") {
    Draft draft = {{"kind", "series"}, {"compare", {{"absolute", 3}}}};
    const Blank warned{"/warn_at", {}, BlankHolds::numbers};
    put_in(draft, warned, QStringLiteral("80; 95"), nz);
    CHECK(draft["warn_at"] == Draft({0.8, 0.95}));
    CHECK(held_in(draft, warned, nz) == QStringLiteral("80, 95"));
    const Blank which{"/compare",
                      {},
                      BlankHolds::which,
                      {{QStringLiteral("absolute"), {}}, {QStringLiteral("above_control"), {}}}};
    CHECK(held_in(draft, which, nz) == QStringLiteral("absolute"));
    put_in(draft, which, QStringLiteral("above_control"), nz);
    CHECK(draft["compare"] == Draft({{"above_control", nullptr}}));
    CHECK(without_blanks(draft).contains("compare") == false);
    CHECK(pointer_of("condition responses[0].within.n") == "/responses/0/within/n");
}

TEST_CASE("Tab goes through the blanks in the order in which they read", "[consent]") {
    Office office;
    ConditionEditor editor(office.session, nullptr);
    begin(editor, "quantity: so much in a time");
    box<QLineEdit>(editor, "how much");
    box<QLineEdit>(editor, "number as printed")->setFocus();
    const QWidget* page = editor.findChild<QScrollArea*>()->widget();
    QPoint before(-1, -1);
    for (int i = 0; i < 12; ++i) {
        const FieldBox* at = box_in_use();
        const QPoint place = at->mapTo(page, QPoint());
        INFO(i << ": " << at->label().toStdString());
        CHECK((place.y() > before.y() || (place.y() == before.y() && place.x() > before.x())));
        before = place;
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
}

TEST_CASE("a choice leaves the keyboard at its blank, wherever it was before", "[consent]") {
    Office office;
    ConditionEditor editor(office.session, nullptr);
    begin(editor, "quantity: so much in a time");
    type(editor, "number as printed", "40");
    type(editor, "grounds; blank: any", "Gannet Patch");
    type(editor, "whom", "Bram");
    pick(editor, "window", "in any");
    CHECK(box<QComboBox>(editor, "window")->hasFocus());
}
