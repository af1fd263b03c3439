// SPDX-License-Identifier: GPL-3.0-or-later
// The one main of test programs that draw. Catch2's own runner, inside a QApplication in the program's
// clothes.
#define CATCH_CONFIG_RUNNER
#include <QApplication>
#include <QLocale>
#include <QLoggingCategory>
#include <catch2/catch.hpp>

#include "forms/shared/paper_style.h"

int main(int argc, char** argv) {
    QLocale::setDefault(QLocale(QLocale::English, QLocale::NewZealand));
    QApplication app(argc, argv);
    QApplication::setQuitOnLastWindowClosed(false);
    // The offscreen platform says for each window that it takes no hints: that is no news.
    QLoggingCategory::setFilterRules(QStringLiteral("default.warning=false"));
    spoilbook::form::PaperStyle::dress(app, spoilbook::form::Light::day);
    return Catch::Session().run(argc, argv);
}
