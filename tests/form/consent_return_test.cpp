// SPDX-License-Identifier: GPL-3.0-or-later
// "Make the return" pressed through to the folder that leaves the office.
#include <QApplication>
#include <QClipboard>
#include <QDialogButtonBox>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>

#include "forms/consent/return_leaf.h"
#include "forms/print/write_return.h"
#include "forms/shared/message_strip.h"
#include "model/book/digest.h"
#include "tests/form/works_sample_desk.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

std::string bytes_of(const QString& path) {
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    return file.readAll().toStdString();
}

QPushButton* the_press(const QWidget& page) {
    for (auto* button : page.findChildren<QPushButton*>()) {
        if (button->text().startsWith(QStringLiteral("Make the return"))) return button;
    }
    return nullptr;
}

}  // namespace

TEST_CASE("the return is pressed through to a folder, and holds what the model writes", "[consent]") {
    SampleDesk desk;
    ReturnLeaf page(desk.figures);
    page.resize(1080, 640);
    page.show();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    REQUIRE(comes_to_say(page, "Nothing is missing from the return for Apr 2026"));
    QPushButton* press = the_press(page);
    REQUIRE(press);
    REQUIRE(press->isEnabled());
    press->setFocus();
    QTest::keyClick(press, Qt::Key_Space);
    auto* dialog = page.findChild<QFileDialog*>();
    REQUIRE(dialog);
    const QTemporaryDir folder;
    const QString to = folder.filePath(QStringLiteral("return-2026-04"));
    REQUIRE(QDir().mkpath(to));
    auto* name = dialog->findChild<QLineEdit*>();
    REQUIRE(name);
    name->setFocus();
    QTest::keyClick(name, Qt::Key_A, Qt::ControlModifier);
    // Pasted: letter by letter the dialog would complete what is typed.
    QApplication::clipboard()->setText(to);
    QTest::keyClick(name, Qt::Key_V, Qt::ControlModifier);
    // The list of names that are like it would take the Enter.
    if (QWidget* list = QApplication::activePopupWidget()) list->close();
    auto* choose = dialog->findChild<QDialogButtonBox*>()->buttons().front();
    choose->setFocus();
    QTest::keyClick(choose, Qt::Key_Space);
    REQUIRE(dialog->result() == QDialog::Accepted);
    const auto* told = page.findChild<MessageStrip*>();
    REQUIRE(QTest::qWaitFor([&] { return !told->text().isEmpty(); }, patience_ms));
    CHECK(told->text().toStdString() == "Written to " + to.toStdString());

    const QStringList names{QStringLiteral("return.json"), QStringLiteral("trips.csv"),
                            QStringLiteral("return.pdf"), QStringLiteral("SHA256SUMS")};
    for (const QString& one : names) {
        INFO(one.toStdString());
        CHECK(QFile::exists(QDir(to).filePath(one)));
    }
    CHECK(bytes_of(QDir(to).filePath(QStringLiteral("return.pdf"))).rfind("%PDF-1.", 0) == 0);

    const FiguresMade figures = desk.figures.newest();
    const auto book = Book::open_to_read(figures->book);
    REQUIRE(book);
    auto tracks = tracks_of(*figures);
    const auto facts =
        gather_return(*book, *figures->ledger,
                      {"2026-04", figures->as_at, figures->journal_head, desk.session.person().toStdString(),
                       figures->import_stamps_ms, &tracks});
    REQUIRE(facts.ok());
    const QString again = folder.filePath(QStringLiteral("by-the-model"));
    REQUIRE(print::write_return(*facts, again.toStdString()).ok());
    for (const QString& one : names) {
        INFO(one.toStdString());
        CHECK(bytes_of(QDir(to).filePath(one)) == bytes_of(QDir(again).filePath(one)));
    }
    // Each line of SHA256SUMS is the digest of the file that lies beside it.
    const std::string sums = bytes_of(QDir(to).filePath(QStringLiteral("SHA256SUMS")));
    for (const char* one : {"return.json", "trips.csv", "return.pdf"}) {
        const std::string digest = hex_text(sha256(bytes_of(QDir(to).filePath(QString::fromLatin1(one)))));
        CHECK(sums.find(digest + "  " + one) != std::string::npos);
    }
}
