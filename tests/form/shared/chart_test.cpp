// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QTemporaryDir>
#include <catch2/catch.hpp>

#include "forms/shared/chart_draw.h"
#include "forms/shared/chart_frame.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

ChartData carried() {
    ChartData data;
    data.title = QStringLiteral("Carried");
    data.sentence = QStringLiteral("Two months of carrying.");
    data.empty_text = QStringLiteral("No load has been closed yet.");
    data.x = {QStringLiteral("2025"), 0, 2, {{0, QStringLiteral("Aug")}, {1, QStringLiteral("Sep")}}};
    data.y = {QStringLiteral("in-situ volume, m³"), 0, 50000};
    data.series = {{QStringLiteral("carried"), SeriesKind::line, 1, {{0, 0}, {1, 20100.25}}},
                   {QStringLiteral("forecast"), SeriesKind::band, 2, {{1, 20000}}, {{1, 24000}}}};
    return data;
}

QByteArray bytes(const QString& path) {
    QFile file(path);
    REQUIRE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

}  // namespace

TEST_CASE("a chart's table has its exact numbers under the names of its axes", "[chart]") {
    const std::vector<ChartRow> rows = chart_rows(carried());
    REQUIRE(rows.size() == 3);
    CHECK(rows[1].x_text == QStringLiteral("Sep"));
    CHECK(rows[1].y == 20100.25);
    CHECK(rows[2].upper == 24000.0);
}

TEST_CASE("a chart is exported as a picture, a drawing, a page and its numbers", "[chart]") {
    QTemporaryDir folder;
    ChartFrame chart;
    chart.set_data(carried());
    for (const char* name : {"a.png", "a.svg", "a.pdf", "a.csv"}) {
        CHECK(chart.write(folder.filePath(QString::fromLatin1(name))).isEmpty());
    }
    const QImage picture(folder.filePath(QStringLiteral("a.png")));
    CHECK(picture.width() == 2080);
    CHECK(bytes(folder.filePath(QStringLiteral("a.svg"))).contains("<svg"));
    CHECK(bytes(folder.filePath(QStringLiteral("a.pdf"))).startsWith("%PDF-"));
    const QByteArray numbers = bytes(folder.filePath(QStringLiteral("a.csv")));
    CHECK(numbers.contains("carried,1,20100.25,\r\n"));
    CHECK(numbers.contains("forecast,1,20000,24000\r\n"));
}

TEST_CASE("a picture of no known kind, or in a folder that is not there, says why and writes nothing",
          "[chart]") {
    QTemporaryDir folder;
    ChartFrame chart;
    chart.set_data(carried());
    CHECK_FALSE(chart.write(folder.filePath(QStringLiteral("a.bmp"))).isEmpty());
    CHECK_FALSE(chart.write(folder.filePath(QStringLiteral("none/a.png"))).isEmpty());
    CHECK_FALSE(QFile::exists(folder.filePath(QStringLiteral("a.bmp"))));
}

TEST_CASE("a chart without a point says why, and turns to its table and back", "[chart]") {
    ChartFrame chart;
    ChartData data = carried();
    data.series.clear();
    chart.set_data(data);
    chart.show();
    bool said = false;
    for (const QLabel* label : chart.findChildren<QLabel*>()) {
        said = said || (label->isVisible() && label->text() == data.empty_text);
    }
    CHECK(said);
    chart.show_table(true);
    CHECK(chart.shows_table());
    chart.set_data(carried());
    CHECK(chart.shows_table());
    chart.show_table(false);
    CHECK_FALSE(chart.shows_table());
}
