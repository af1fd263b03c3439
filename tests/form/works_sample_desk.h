// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/works/figures_source.h"
#include "model/book/open.h"
#include "model/folder/import_folder.h"
#include "model/unit/time_text.h"

namespace spoilbook::tests {

inline constexpr int patience_ms = 60000;  // a slow machine, a build that checks everything

inline Instant end_of_may() {
    return *parse_instant("2026-05-30T18:00+12:00", Zone::utc());
}

/// The sample book, made once.
inline const std::string& sample_book() {
    static const QTemporaryDir folder;
    static const std::string path = [] {
        const std::string made = folder.filePath(QStringLiteral("marram.sbook")).toStdString();
        make_book(made, "test", [](Book& book) -> Checked<Done> {
            const auto outcome = import_folder(book, SPOILBOOK_SOURCE_DIR "/sample-db/marram",
                                               {EntryKind::import, end_of_may(), {}, {}});
            if (!outcome) return outcome.refusals();
            return Done{};
        }).value();
        return made;
    }();
    return path;
}

/// The desks over it, for reading.
struct SampleDesk {
    form::BookSession session{std::move(*Book::open_to_read(sample_book())), end_of_may,
                              QStringLiteral("a test reads")};
    form::FiguresSource figures{session};
};

/// Some label of the page that is seen and has these words.
inline bool says(const QWidget& page, const QString& words) {
    for (const QLabel* label : page.findChildren<QLabel*>()) {
        if (label->isVisible() && label->text().contains(words)) return true;
    }
    return false;
}

inline bool comes_to_say(const QWidget& page, const char* words) {
    return QTest::qWaitFor([&] { return says(page, QString::fromUtf8(words)); }, patience_ms);
}

}  // namespace spoilbook::tests
