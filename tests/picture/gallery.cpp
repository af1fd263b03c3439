// SPDX-License-Identifier: GPL-3.0-or-later
// gallery PAGE [day|night]: shows the shared widgets in all their states, to be looked at and pictured.
#include <QApplication>
#include <QTextStream>
#include <functional>
#include <map>

#include "forms/shared/paper_style.h"
#include "tests/picture/gallery_pages.h"

using namespace spoilbook;
using namespace spoilbook::form;

int main(int argc, char** argv) {
    QApplication app(argc, argv);
    const QStringList given = QApplication::arguments();
    PaperStyle::dress(app, given.contains(QStringLiteral("night")) ? Light::night : Light::day);
    const std::map<QString, std::function<QWidget*()>> pages = {
        {QStringLiteral("marks"), gallery::marks_page},
        {QStringLiteral("icons"), gallery::icons_page},
        {QStringLiteral("fields"), gallery::fields_page},
        {QStringLiteral("table"), [] { return gallery::table_page(false); }},
        {QStringLiteral("table-empty"), [] { return gallery::table_page(true); }},
        {QStringLiteral("chart"), [] { return gallery::chart_page(false); }},
        {QStringLiteral("chart-empty"), [] { return gallery::chart_page(true); }},
        {QStringLiteral("chart-table"), gallery::chart_table_page},
        {QStringLiteral("busy"), gallery::busy_page},
        {QStringLiteral("sheet"), gallery::sheet_page},
        {QStringLiteral("barge"), [] { return gallery::window_page(QStringLiteral("barge"), false); }},
        {QStringLiteral("works"), [] { return gallery::window_page(QStringLiteral("works"), false); }},
        {QStringLiteral("consent"), [] { return gallery::window_page(QStringLiteral("consent"), true); }},
        {QStringLiteral("start"), [] { return gallery::start_page(false); }},
        {QStringLiteral("start-empty"), [] { return gallery::start_page(true); }},
        {QStringLiteral("person"), gallery::person_page},
    };
    const auto page = pages.find(given.value(1));
    if (page == pages.end()) {
        QTextStream err(stderr);
        err << "usage: gallery PAGE [day|night]; PAGE is one of:";
        for (const auto& [name, make] : pages)
            err << ' ' << name;
        err << '\n';
        return 2;
    }
    QWidget* window = page->second();
    window->setWindowTitle(QStringLiteral("Gallery: ") + page->first);
    window->showMaximized();
    const int done = QApplication::exec();
    delete window;
    return done;
}
