// SPDX-License-Identifier: GPL-3.0-or-later
// The duties of the sample book, and one marked as done by keys with a file that shows it.
#include <QDate>
#include <QFile>
#include <QLineEdit>
#include <QTableView>

#include "forms/consent/done_sheet.h"
#include "forms/consent/duties_leaf.h"
#include "forms/consent/duty_month.h"
#include "forms/shared/sheet.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "model/book/digest.h"
#include "model/book/journal_check.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

const std::vector<DutyRow>& sample_duties() {
    static const FiguresMade figures = make_figures(sample_book(), end_of_may());
    static const auto rows = duty_rows(duty_calendar(*figures->ledger, figures->as_at), figures->season.zone,
                                       figures->as_at, QLocale::c());
    return rows;
}

/// A copy of the sample book that may be written.
struct OwnDesk {
    QTemporaryDir folder;
    BookSession session{copy(), end_of_may, {}};
    FiguresSource figures{session};

    Book copy() const {
        const QString to = folder.filePath(QStringLiteral("own.sbook"));
        QFile::copy(QString::fromStdString(sample_book()), to);
        return std::move(
            *Book::open_to_write(to.toStdString(), "test", {EntryKind::change, end_of_may(), "Esi", {}}));
    }
};

QPushButton* press_of(const QWidget& page, const QString& text) {
    for (auto* button : page.findChildren<QPushButton*>()) {
        if (button->text() == text) return button;
    }
    return nullptr;
}

QLineEdit* box_of(const QWidget& page, const QString& label) {
    for (const auto* field : page.findChildren<FieldBox*>()) {
        if (field->label() == label) return field->findChild<QLineEdit*>();
    }
    return nullptr;
}

}  // namespace

TEST_CASE("every duty says its state in a word, and its due time with the days passed over", "[duties]") {
    int reasoned = 0;
    for (const DutyRow& row : sample_duties()) {
        CHECK(!row.word.isEmpty());
        CHECK(!row.how.isEmpty());
        if (row.word == QStringLiteral("overdue")) CHECK(row.shape == State::hold);
        if (row.word == QStringLiteral("due")) CHECK(row.shape == State::attention);
        if (row.how.contains(QStringLiteral("10 working days after 30 Nov 2025"))) {
            ++reasoned;
            // Counted on a wall calendar.
            CHECK(row.how.toStdString() ==
                  "10 working days after 30 Nov 2025: 12 Dec 2025, 24:00. Not working: 6 Dec to 7 Dec.");
            CHECK(row.day == QDate(2025, 12, 12));
        }
    }
    CHECK(reasoned == 1);
}

TEST_CASE("what is open stands first, what is done last", "[duties]") {
    const auto& rows = sample_duties();
    REQUIRE(rows.size() > 10);
    CHECK(rows.back().state == DutyState::done);
    const auto last_open =
        std::find_if(rows.rbegin(), rows.rend(), [](const DutyRow& r) { return r.can_be_done; });
    const auto first_other =
        std::find_if(rows.begin(), rows.end(), [](const DutyRow& r) { return !r.can_be_done; });
    CHECK((last_open == rows.rend() || &*last_open < &*first_other));
}

TEST_CASE("the month says in words what is due on a day", "[duties]") {
    DutyMonth month;
    month.show_duties(sample_duties(), QDate(2026, 5, 30));
    CHECK(month.selectedDate() == QDate(2026, 5, 30));
    CHECK(month.words_of(QDate(2025, 12, 12)).contains(QStringLiteral("condition 31")));
    CHECK(month.words_of(QDate(2025, 12, 13)).isEmpty());
}

TEST_CASE("a duty is marked as done by keys, with a file that the book keeps", "[duties]") {
    OwnDesk desk;
    DutyRow duty;
    for (const DutyRow& row : sample_duties()) {
        if (row.can_be_done) duty = row;
    }
    REQUIRE(duty.can_be_done);
    DoneSheet sheet(desk.session, duty);
    sheet.show();
    REQUIRE(QTest::qWaitForWindowActive(&sheet));
    const QString letter = desk.folder.filePath(QStringLiteral("receipt.pdf"));
    const QByteArray bytes("%PDF received with thanks");
    {
        QFile file(letter);
        REQUIRE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
    }
    sheet.add_file(letter);
    bool written = false;
    QObject::connect(&sheet, &DoneSheet::written, [&] { written = true; });
    auto* press = press_of(sheet, QStringLiteral("Mark as done"));
    REQUIRE(press);
    press->setFocus();
    QTest::keyClick(press, Qt::Key_Space);
    CHECK(!written);  // neither when nor by whom is said
    CHECK(says(sheet, QStringLiteral("Who did it must be said.")));
    const auto type = [&](const QString& label, const QString& text) {
        auto* box = box_of(sheet, label);
        REQUIRE(box);
        box->setFocus();
        QTest::keyClicks(box, text);
        QTest::keyClick(box, Qt::Key_Return);
    };
    type(QStringLiteral("Done at"), QStringLiteral("2026-05-29 14:00"));
    type(QStringLiteral("Done by"), QStringLiteral("Esi"));
    type(QStringLiteral("What shows it"), QStringLiteral("letter 12"));
    press->setFocus();
    QTest::keyClick(press, Qt::Key_Space);
    REQUIRE(written);
    const auto& done = desk.session.season().duties_done.rows().back();
    const std::string digest = hex_text(sha256(bytes.toStdString()));
    CHECK(done.condition == duty.condition.toStdString());
    CHECK(done.by == "Esi");
    CHECK(done.evidence == "letter 12; receipt.pdf sha256:" + digest);
    CHECK(desk.session.book().material(digest) == bytes.toStdString());
    CHECK(!check_journal(desk.session.book()));
}

TEST_CASE("the leaf shows the list beside the month and opens a duty by Enter", "[duties]") {
    OwnDesk desk;
    DutiesLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "coming"));
    auto* table = page.findChild<QTableView*>();
    const auto cell = [&](int row, int column) {
        return table->model()->index(row, column).data().toString();
    };
    int duties = 0, done = -1;
    for (int row = 0; row < table->model()->rowCount(); ++row) {
        if (cell(row, 1).startsWith(QStringLiteral("answer"))) continue;  // a passed trigger asks for it
        ++duties;
        if (done < 0 && cell(row, 0).startsWith(QStringLiteral("done"))) done = row;
    }
    CHECK(duties == int(sample_duties().size()));
    CHECK(duties < table->model()->rowCount());
    REQUIRE(done >= 0);
    table->setCurrentIndex(table->model()->index(done, 0));
    table->setFocus();
    QTest::keyClick(table, Qt::Key_Return);
    const auto* sheet = page.findChild<Sheet*>();
    REQUIRE(sheet->is_open());
    CHECK(says(page, QStringLiteral("The consent's own text prevails.")));
}
