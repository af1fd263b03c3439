// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>

#include "forms/shared/main_window.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/paper_style.h"
#include "tests/picture/gallery_pages.h"
#include "tests/support/paper_library.h"

namespace spoilbook::gallery {
using namespace form;
namespace {

QWidget* leaf(const QString& key, QWidget* parent) {
    QWidget* page = key == QStringLiteral("shift")  ? marks_page()
                    : key == QStringLiteral("load") ? fields_page()
                    : key == QStringLiteral("burn") ? chart_page(false)
                                                    : table_page(key == QStringLiteral("water"));
    page->setParent(parent);
    return page;
}

// The window refers to all of these: they live and die with it.
struct Held : QObject {
    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("s.ini")), QSettings::IniFormat};
    Memory memory{settings};
    test::PaperLibrary library;
};

MainWindow* window(Held*& held) {
    held = new Held;
    held->library.desks = test::paper_desks(leaf);
    auto* style = qobject_cast<PaperStyle*>(QApplication::style());
    auto* made = new MainWindow(held->library, held->memory, *style);
    QObject::connect(qApp, &QObject::destroyed, held, &QObject::deleteLater);
    return made;
}

// A picture is of the book once it is open.
void open_whole(MainWindow& window, const QString& path) {
    window.open_book(path);
    while (window.busy())
        QApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

}  // namespace

QWidget* window_page(const QString& desk, bool reading_only) {
    Held* held = nullptr;
    MainWindow* made = window(held);
    if (reading_only)
        held->library.why_not = QStringLiteral("Bram has it open on the tug's tablet since 16:20");
    open_whole(*made, QStringLiteral("/srv/books/marram.sbook"));
    made->turn_to(desk, {});
    return made;
}

QWidget* start_page(bool empty) {
    Held* held = nullptr;
    MainWindow* made = window(held);
    if (!empty) {
        held->memory.add_recent_book(QStringLiteral("/srv/books/gone/outer-bar-2024.sbook"));
        held->memory.add_recent_book(QStringLiteral("/etc/hostname"));
        open_whole(*made, QStringLiteral("/srv/books/gone/outer-bar-2024.sbook"));
    }
    return made;
}

QWidget* person_page() {
    QWidget* made = window_page(QStringLiteral("barge"), false);
    QMetaObject::invokeMethod(
        made,
        [made] {
            for (QAction* action : made->actions()) {
                if (action->shortcut() == QKeySequence(QStringLiteral("Ctrl+U"))) action->trigger();
            }
        },
        Qt::QueuedConnection);
    return made;
}

}  // namespace spoilbook::gallery
