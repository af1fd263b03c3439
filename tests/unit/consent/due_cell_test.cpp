// SPDX-License-Identifier: GPL-3.0-or-later
// Which cell a load is to go to: the open one with most room under every limit on each cell.
#include <catch2/catch.hpp>
#include <random>

#include "planned.h"

using namespace spoilbook;

namespace {

std::string each_cell(double value, const std::string& window = R"({"kind":"term"})",
                      const std::string& more = "") {
    return R"("measure":"in_situ_m3","each_of":"cell","value":)" + std::to_string(value) + R"(,"window":)" +
           window + more;
}

}  // namespace

TEST_CASE("the due cell has room under each limit on cells, not under the first alone", "[check][due_cell]") {
    Planned a;
    a.small.released_at(a.small.at("2025-11-03T09:00"), 150, a.cell_w);  // today
    a.small.released_at(a.small.at("2025-10-01T09:00"), 300, a.cell_e);  // long ago
    a.limit(each_cell(1000));
    CHECK(a.check().due_cell == "W");
    a.limit(each_cell(200, R"({"kind":"calendar","unit":"day"})"));  // W: 150 + 100 of 200
    CHECK(a.check().due_cell == "E");
    a.limit(each_cell(350));  // E: 300 + 100 of 350
    CHECK(a.check().due_cell.empty());
}

TEST_CASE("of several limits the one that leaves a cell least room orders it", "[check][due_cell]") {
    Planned a;
    a.small.released_at(a.small.at("2025-11-03T09:00"), 100, a.cell_w);
    a.small.released_at(a.small.at("2025-10-01T09:00"), 300, a.cell_e);
    a.limit(each_cell(1000));                                        // W 0.1, E 0.3
    a.limit(each_cell(200, R"({"kind":"calendar","unit":"day"})"));  // W 0.5, E 0
    CHECK(a.check().due_cell == "E");
}

TEST_CASE("a cell of another ground, or one that is closed, is not due", "[check][due_cell]") {
    Planned a;
    const Id bank = a.small.named(a.small.season.grounds, &Ground::ground, "Bank");
    Cell far;
    far.id = a.small.id();
    far.ground = bank;
    far.cell = "F";
    far.kind = "cell";
    a.small.season.cells.add(far);
    a.small.released_at(a.small.at("2025-10-01T09:00"), 10, a.cell_w);
    a.small.released_at(a.small.at("2025-10-01T09:00"), 20, a.cell_e);
    a.limit(each_cell(1000));
    CHECK(a.check().due_cell == "W");  // not F, which holds nothing but lies in Bank
    a.condition("time", R"({"mode":"forbid","dates":["11-01..11-30"],"applies":{"cells":["W"]}})");
    CHECK(a.check().due_cell == "E");
}

TEST_CASE("a limit on other grounds or materials orders no cells for this load", "[check][due_cell]") {
    Planned a;
    a.limit(each_cell(1000, R"({"kind":"term"})", R"(,"applies":{"materials":["clay"]})"));
    CHECK(a.check().due_cell.empty());
    const Id bank = a.small.named(a.small.season.grounds, &Ground::ground, "Bank");
    a.planned.ground = bank;
    a.limit(each_cell(1000, R"({"kind":"term"})", R"(,"applies":{"grounds":["Deep Hole"]})"));
    CHECK(a.check().due_cell.empty());
}

TEST_CASE("a cell that an open event has closed is not due", "[check][due_cell]") {
    Planned a;
    a.small.released_at(a.small.at("2025-11-03T06:00"), 10, a.cell_w);
    a.small.released_at(a.small.at("2025-11-02T06:00"), 50, a.cell_e);
    a.condition("series", R"({"variable":"turbidity","compare":{"absolute":5},"tier":2,
                              "responses":[{"tier":2,"action":"change_cell"}]})");
    a.water(a.small.at("2025-11-03T07:00"));  // W was in use
    a.limit(each_cell(1000));
    CHECK(a.check().due_cell == "E");
}

TEST_CASE("a cell of which nobody knows how full it is comes after those that are known",
          "[check][due_cell]") {
    Planned a;
    a.small.released_at(a.small.at("2025-11-01T09:00"), std::nullopt, a.cell_w);
    a.small.released_at(a.small.at("2025-11-01T10:00"), 500, a.cell_e);
    a.limit(each_cell(1000));
    CHECK(a.check().due_cell == "E");
}

TEST_CASE("the due cell is the one that trying every cell by itself finds", "[check][due_cell]") {
    std::mt19937 chance(20260);
    const auto any = [&](int most) { return static_cast<double>(chance() % static_cast<unsigned>(most)); };
    for (int round = 0; round < 60; ++round) {
        CAPTURE(round);
        Planned a;
        std::vector<std::pair<std::string, Id>> cells{{"W", a.cell_w}, {"E", a.cell_e}};
        for (const char* name : {"N", "S"})
            cells.emplace_back(name, a.cell(name));
        const std::vector<const char*> days{"2025-11-03T07:00", "2025-11-02T07:00", "2025-10-20T07:00"};
        std::vector<std::vector<double>> used(cells.size(), std::vector<double>(days.size()));
        for (std::size_t c = 0; c < cells.size(); ++c) {
            for (std::size_t d = 0; d < days.size(); ++d) {
                used[c][d] = any(400) + 0.5 + 0.01 * static_cast<double>(c);
                a.small.released_at(a.small.at(days[d]), used[c][d], cells[c].second);
            }
        }
        const double term = 300 + any(1200), month = 300 + any(800), day = 150 + any(500);
        a.limit(each_cell(term));
        a.limit(each_cell(month, R"({"kind":"calendar","unit":"month"})"));
        a.limit(each_cell(day, R"({"kind":"calendar","unit":"day"})"));
        std::string due;
        double least = 0;
        for (std::size_t c = 0; c < cells.size(); ++c) {
            const auto& [today, before, long_ago] = std::tie(used[c][0], used[c][1], used[c][2]);
            const double share =
                std::max({(today + before + long_ago) / term, (today + before) / month, today / day});
            a.planned.cell = cells[c].second;
            const bool open = a.verdict() != CheckState::hold;
            if (!open || (!due.empty() && share >= least)) continue;
            due = cells[c].first;
            least = share;
        }
        a.planned.cell = Id{};
        CHECK(a.check().due_cell == due);
    }
}
