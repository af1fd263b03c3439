// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/survey_bed.h"

#include <algorithm>
#include <random>

#include "tests/unit/bed/grids.h"

namespace spoilbook::test {
namespace {

MadeGrid one_pixel(double number) {
    MadeGrid grid;
    grid.rows = {{number}};
    return grid;
}

double level_of(const MadeGrid& grid, const Survey& survey) {
    return bed_of(grid, survey).levels({0, 0, 1, 1}).front();
}

}  // namespace

TEST_CASE("depths and levels of one bed are one level, brought to chart datum", "[bed]") {
    Survey survey = survey_up(0.1);
    CHECK_THAT(level_of(one_pixel(-9.6), survey), WithinAbs(-9.6, 1e-6));
    survey.offset_m = 0.25;
    CHECK_THAT(level_of(one_pixel(-9.6), survey), WithinAbs(-9.35, 1e-6));
    survey.positive = "down";
    CHECK_THAT(level_of(one_pixel(9.6), survey), WithinAbs(-9.35, 1e-6));
}

TEST_CASE("a survey that does not say which way its numbers grow is not guessed at", "[bed]") {
    Survey survey = survey_up(0.1);
    survey.positive.clear();
    const std::string text = one_pixel(-9.6).text();
    const auto bed = SurveyBed::open(survey, HeldBytes(text), harbour_map());
    REQUIRE_FALSE(bed);
    CHECK(bed.refusals().front().where == "survey SV-1");
}

TEST_CASE("a level is as sure as the survey says, else as its order asks, else nobody knows", "[bed]") {
    Survey survey = survey_up(0.1);
    survey.s44_order = "1a";
    CHECK(bed_of(one_pixel(-10), survey).u_at(-10) == 0.1);
    survey.u_m.reset();
    // TVU of order 1a at 10 m is 0.516624 m at 95 % (S-44 edition 6.1.0, seen in text).
    CHECK_THAT(*bed_of(one_pixel(-10), survey).u_at(-10), WithinAbs(0.516624 / 1.96, 5e-7));
    survey.s44_order.clear();
    CHECK_FALSE(bed_of(one_pixel(-10), survey).u_at(-10));
}

TEST_CASE("a walk shows what an area holds of a bed once, in strips that fit together", "[bed]") {
    // 5 000 columns make strips of 209 rows: three of them.
    MadeGrid grid;
    grid.rows.assign(500, std::vector<double>(5'000, -8));
    const auto bed = bed_of(grid, survey_up(0.1));
    double m2 = 0;
    int strips = 0, next_row = 0;
    const auto walked =
        walk(bed, area_of({grid.part(0.5, 0.25, 4'999.5, 499.75)}), [&](const BedStrip& strip) {
            CHECK(strip.window.row == next_row);
            next_row += strip.window.rows;
            ++strips;
            for (const double share : strip.shares)
                m2 += share;
            return true;
        });
    REQUIRE(walked);
    CHECK(strips == 3);
    CHECK(next_row == 500);
    CHECK_THAT(m2, WithinAbs(4'999 * 499.5, 1e-3));
}

TEST_CASE("a walk over a grid that lies elsewhere shows nothing", "[bed]") {
    const auto grid = one_pixel(-8);
    const auto bed = bed_of(grid, survey_up(0.1));
    bool shown = false;
    REQUIRE(walk(bed, area_of({grid.part(5, 5, 9, 9)}), [&](const BedStrip&) { return shown = true; }));
    CHECK_FALSE(shown);
    CHECK_FALSE(shows(bed, area_of({grid.part(5, 5, 9, 9)})));
}

TEST_CASE("a bed shows an area where a pixel of it was surveyed, and stops looking there", "[bed]") {
    MadeGrid grid;
    grid.rows.assign(500, std::vector<double>(5'000, NAN));
    grid.rows[0][4] = -8;
    const auto bed = bed_of(grid, survey_up(0.1));
    CHECK(shows(bed, area_of({grid.part(4.9, 0, 20, 499.1)})));
    CHECK_FALSE(shows(bed, area_of({grid.part(5.1, 0, 20, 500)})));
    int strips = 0;
    REQUIRE(walk(bed, area_of({grid.part(0, 0, 5'000, 500)}), [&](const BedStrip&) { return ++strips < 2; }));
    CHECK(strips == 2);
}

TEST_CASE("a text grid is read to its end before it is taken, and words are no levels", "[bed]") {
    MadeGrid grid;
    grid.rows.assign(40, std::vector<double>(20, -8));
    const std::string text = grid.text();
    const auto why = [](const std::string& bytes) {
        const auto bed = SurveyBed::open(survey_up(0.1), HeldBytes(bytes), harbour_map());
        return bed ? std::string() : bed.refusals().front().what;
    };
    CHECK(why(text).empty());
    CHECK(why(text.substr(0, text.size() / 2)).find("cut short") != std::string::npos);
    std::string worded = text;
    worded.replace(worded.rfind("-8.000000"), 9, "n/a");
    CHECK(why(worded) == "\"n/a\" stands where a number should");
    // A surveyor's decimal comma is a number all the same.
    std::string comma = text;
    std::replace(comma.begin() + static_cast<long>(comma.find("-8.")), comma.end(), '.', ',');
    CHECK(why(comma).empty());
}

TEST_CASE("an order that S-44 does not have is told, not taken for none", "[bed]") {
    Survey survey = survey_up(0.1);
    survey.u_m.reset();
    survey.s44_order = "order 3";
    const std::string text = one_pixel(-9.6).text();
    const auto bed = SurveyBed::open(survey, HeldBytes(text), harbour_map());
    REQUIRE_FALSE(bed);
    CHECK(bed.refusals().front().what == "order 3 is no order of S-44");
}

TEST_CASE("a grid whose bytes were altered is read or refused, and nothing else", "[bed]") {
    MadeGrid grid;
    grid.rows.assign(6, std::vector<double>(6, -8));
    const std::string text = grid.text();
    const Area whole = area_of({grid.part(0, 0, 6, 6)});
    std::mt19937 random(7);
    int read = 0;
    for (int i = 0; i < 400; ++i) {
        std::string altered = text;
        for (int n = 0; n < 3; ++n)
            altered[random() % altered.size()] = static_cast<char>(random() % 256);
        if (i % 3 == 0) altered.resize(random() % altered.size());
        const auto bed = SurveyBed::open(survey_up(0.1), HeldBytes(altered), harbour_map());
        if (bed && walk(*bed, whole, [](const BedStrip&) { return true; })) ++read;
    }
    CHECK(read > 0);
    CHECK(read < 400);
}

}  // namespace spoilbook::test
