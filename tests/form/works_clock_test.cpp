// SPDX-License-Identifier: GPL-3.0-or-later
// Figures for now grow old while nothing is written.
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/works/figures_source.h"
#include "model/book/open.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::form;
using namespace spoilbook::tests;

namespace {

constexpr int patience_ms = 60000;

struct Office {
    QTemporaryDir folder;
    Instant now = morning(600);
    std::unique_ptr<BookSession> session;
    std::unique_ptr<FiguresSource> figures;

    Office() {
        const std::string path = folder.filePath(QStringLiteral("a.sbook")).toStdString();
        make_book(path, "office", [](Book& book) -> Checked<Done> {
            log_tiny_season(book);
            return Done{};
        }).value();
        session = std::make_unique<BookSession>(
            std::move(*Book::open_to_read(path)), [this] { return now; }, QStringLiteral("a test reads"));
        figures = std::make_unique<FiguresSource>(*session);
    }
    void make() {
        QSignalSpy made(figures.get(), &FiguresSource::made);
        figures->want();
        REQUIRE(made.wait(patience_ms));
    }
};

}  // namespace

TEST_CASE("figures for now that are over a minute old are worked out again when they are wanted", "[works]") {
    Office office;
    office.make();
    CHECK(office.figures->newest()->as_at == morning(600));
    office.now = morning(600) + ms_per_minute / 2;
    office.figures->want();
    CHECK_FALSE(office.figures->at_work());
    office.now = morning(602);
    office.make();
    CHECK(office.figures->newest()->as_at == morning(602));
}

TEST_CASE("a minute that passes makes figures for now stale, and those as at a past time not", "[works]") {
    Office office;
    office.make();
    QSignalSpy stale(office.figures.get(), &FiguresSource::stale);
    office.now = morning(601);
    emit office.session->minute_passed();
    CHECK(stale.size() == 1);
    office.session->set_as_at(morning(300));
    office.make();
    stale.clear();
    office.now = morning(700);
    emit office.session->minute_passed();
    CHECK(stale.isEmpty());
    office.figures->want();
    CHECK_FALSE(office.figures->at_work());
}
