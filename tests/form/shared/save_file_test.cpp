// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <catch2/catch.hpp>

#include "forms/shared/save_file.h"

using spoilbook::form::folder_of_its_own;

TEST_CASE("a folder of its own is made where others have their files, and an empty one is taken as it is",
          "[save]") {
    const QTemporaryDir home;
    const QString name = QStringLiteral("return-2026-04");
    const QString empty = home.filePath(QStringLiteral("new"));
    CHECK(folder_of_its_own(empty, name) == empty);
    REQUIRE(QDir().mkpath(empty));
    CHECK(folder_of_its_own(empty, name) == empty);
    QFile hidden(empty + QStringLiteral("/.letter"));
    REQUIRE(hidden.open(QIODevice::WriteOnly));
    CHECK(folder_of_its_own(empty, name) == empty + QStringLiteral("/return-2026-04"));
}
