// SPDX-License-Identifier: GPL-3.0-or-later
// The cell of a release that is blank, or another than its position says.
#include "forms/barge/spot_line.h"
#include "tests/form/barge_wheelhouse.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

std::string box(double west_deg, double east_deg) {
    const std::string west = std::to_string(west_deg), east = std::to_string(east_deg);
    return R"({"type":"Polygon","coordinates":[[[)" + west + ",-40.59],[" + east + ",-40.59],[" + east +
           ",-40.58],[" + west + ",-40.58],[" + west + R"(,-40.59]]]})";
}

/// The invented book with an outline of its ground, cut in two: A1 in the west, B2 in the east. A trip is
/// under way, bound for `cell`.
Book a_book_of_two_cells(const std::string& cell = "") {
    Book book = a_barge_book();
    const auto draw = [&](const char* kind_name, const char* label, const std::string& outline) {
        const Id id = [&] {
            for (const Row& row : book.rows(kind(kind_name)))
                if (book.label_of(kind(kind_name), row.id) == label) return row.id;
            FAIL("no " << label);
            return Id();
        }();
        set_field(book, by("Ana"), kind_name, id, "geometry", outline).value();
    };
    draw("ground", "Gannet Patch", box(179.62, 179.64));
    draw("cell", "A1", box(179.62, 179.63));
    draw("cell", "B2", box(179.63, 179.64));
    log_trip_under_way(book);
    if (!cell.empty()) log_line(book, at("08:41"), "trip", "T-0001", {{"cell", cell}});
    return book;
}

struct AtTheGround {
    Wheelhouse w;
    explicit AtTheGround(const std::string& cell = "") : w(a_book_of_two_cells(cell)) {
        w.press(Qt::Key_F7, "10:05");
    }
    /// What stands beside position and cell of the release.
    QString beside() {
        QString said;
        for (const auto* line : w.page->findChildren<form::SpotLine*>())
            if (line->isVisible()) said += line->accessibleName();
        return said;
    }
    void place(const char* lat, const char* lon) {
        w.type(QStringLiteral("Latitude"), QString::fromUtf8(lat));
        w.type(QStringLiteral("Longitude"), QString::fromUtf8(lon));
    }
    /// The press below a box that offers this; null: none does.
    QPushButton* offer(const char* words) {
        for (auto* button : w.page->findChildren<QPushButton*>())
            if (button->isVisible() && button->text().contains(QString::fromUtf8(words))) return button;
        return nullptr;
    }
    std::string cell() { return texts_of(w.session.book(), "release")["R-0001"]["cell"]; }
};

}  // namespace

TEST_CASE("a release without a cell is told, and the cell of its position is offered and taken by a press",
          "[barge]") {
    AtTheGround g;
    CHECK(g.beside().contains(QStringLiteral("no cell, It counts under no cell of Gannet Patch")));
    CHECK(g.offer("by its position") == nullptr);
    g.place("-40.585", "179.635");
    CHECK(g.beside().contains(QStringLiteral("By its position limits count it in B2")));
    CHECK(g.cell().empty());
    QPushButton* offer = g.offer("B2 · by its position");
    REQUIRE(offer != nullptr);
    QTest::mouseClick(offer, Qt::LeftButton);
    CHECK(g.cell() == "B2");
    CHECK_FALSE(g.beside().contains(QStringLiteral("cell")));
    CHECK(g.offer("by its position") == nullptr);
}

TEST_CASE("a logged cell that the position contradicts is told, with how far and where it lies", "[barge]") {
    AtTheGround g("A1");
    CHECK_FALSE(g.beside().contains(QStringLiteral("cell")));
    g.place("-40.585", "179.635");
    // COMP: 0.005° of longitude at 40.585° S are 423.3 m on the ellipsoid.
    CHECK(g.beside().contains(QStringLiteral("not in A1, The position lies 423 m outside cell A1, in B2")));
    CHECK(g.cell() == "A1");
    g.place("-40.585", "179.63006");
    CHECK(g.beside().contains(QStringLiteral("cannot tell, The position lies 5 m outside cell A1, ± 20 m")));
    g.place("-40.585", "179.625");
    CHECK_FALSE(g.beside().contains(QStringLiteral("cell")));
}
