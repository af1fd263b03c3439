// SPDX-License-Identifier: GPL-3.0-or-later
// spoilbook [BOOK]: the desktop. Start-up and wiring alone.
#include <fmt/format.h>

#include <QApplication>
#include <QCommandLineParser>
#include <QDir>
#include <QLocale>
#include <QSettings>
#include <QStandardPaths>
#include <QTranslator>
#include <cstdlib>
#include <functional>

#include "app/desktop/desks.h"
#include "app/desktop/library.h"
#include "app/machine/machine.h"
#include "forms/shared/icon.h"
#include "forms/shared/main_window.h"
#include "forms/shared/paper_style.h"
#include "model/unit/time_text.h"

using namespace spoilbook;

namespace {

// Built beside the program, or installed with it.
QString shipped_sample() {
    const QDir here(QApplication::applicationDirPath());
    for (const char* place : {"../sample/sample.sbook", "../share/spoilbook/sample.sbook"}) {
        const QString path = QDir::cleanPath(here.filePath(QString::fromLatin1(place)));
        if (QFile::exists(path)) return path;
    }
    return {};
}

QString own_sample() {
    return QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation) +
           QStringLiteral("/marram.sbook");
}

// The machine's clock, or one that starts at another time and goes on from there: for a demo, whose shift is
// running on a day long past.
std::function<Instant()> clock_from(const QString& text) {
    if (text.isEmpty()) return now;
    const auto start = parse_instant(text.toStdString(), Zone::utc());
    if (!start) {
        fmt::print(stderr, "--clock: {}\n", one_line(start.refusals().front()));
        std::exit(2);
    }
    return [ahead = *start - now()] { return now() + ahead; };
}

}  // namespace

int main(int argc, char** argv) {
    QApplication app(argc, argv);
    QApplication::setApplicationName(QStringLiteral("spoilbook"));
    QApplication::setApplicationVersion(QStringLiteral(SPOILBOOK_VERSION));
    QTranslator words;
    const QString translations = QApplication::applicationDirPath() + QStringLiteral("/../share/spoilbook");
    if (words.load(QLocale(), QStringLiteral("spoilbook"), QStringLiteral("_"), translations)) {
        QApplication::installTranslator(&words);
    }
    QCommandLineParser arguments;
    arguments.addHelpOption();
    arguments.addVersionOption();
    arguments.addPositionalArgument(QStringLiteral("BOOK"), form::MainWindow::tr("a .sbook file to open"));
    const QCommandLineOption clock(QStringLiteral("clock"),
                                   form::MainWindow::tr("start the clock at this time (ISO 8601)"),
                                   QStringLiteral("TIME"));
    arguments.addOption(clock);
    arguments.process(app);

    QSettings settings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("spoilbook"),
                       QStringLiteral("spoilbook"));
    form::Memory memory(settings);
    form::PaperStyle* style = form::PaperStyle::dress(app, memory.light());
    QApplication::setWindowIcon(form::icon(QStringLiteral("book"), form::Tone::accent));
    BookLibrary library(
        device_name(), clock_from(arguments.value(clock)),
        [&memory](form::BookSession& session) { return make_desks(session, memory); }, shipped_sample(),
        own_sample());
    form::MainWindow window(library, memory, *style);
    window.show();
    if (!arguments.positionalArguments().isEmpty()) {
        // After the window is there: a large book must not keep the screen empty.
        const QString book = QDir::current().absoluteFilePath(arguments.positionalArguments().front());
        QMetaObject::invokeMethod(
            &window, [&window, book] { window.open_book(book); }, Qt::QueuedConnection);
    }
    return QApplication::exec();
}
