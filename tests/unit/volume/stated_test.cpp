// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tests/unit/volume/a_season.h"

using Catch::Matchers::WithinAbs;
using namespace spoilbook;
using namespace spoilbook::test;

TEST_CASE("a stated hopper volume gives the in-situ volume by bulking", "[stated]") {
    ASeason a;
    a.load.material = id(sand);
    a.load.stated_hopper_m3 = 250;
    const Worked w(a);
    CHECK_THAT(w.by(Method::stated).in_situ_m3->value, WithinAbs(200, 1e-9));
    CHECK_THAT(w.by(Method::stated).in_situ_m3->u(), WithinAbs(8, 1e-9));  // 200·0.05/1.25
    CHECK(w.by(Method::stated).hopper_m3->u() == 0);
    CHECK(w.assumes(Method::stated, "taken as exact"));
}

TEST_CASE("a stated in-situ volume gives the hopper volume by bulking", "[stated]") {
    ASeason a;
    a.load.material = id(sand);
    a.load.stated_in_situ_m3 = 200;
    const Worked w(a);
    CHECK_THAT(w.by(Method::stated).hopper_m3->value, WithinAbs(250, 1e-9));
    CHECK_THAT(w.by(Method::stated).hopper_m3->u(), WithinAbs(10, 1e-9));
    CHECK(w.by(Method::stated).in_situ_m3->u() == 0);
}

TEST_CASE("stated volumes stand as they are, also where bulking says otherwise", "[stated]") {
    ASeason a;
    a.load.material = id(sand);
    a.load.stated_hopper_m3 = 250;
    a.load.stated_in_situ_m3 = 215;
    const Worked w(a);
    CHECK(w.by(Method::stated).hopper_m3->value == 250);
    CHECK(w.by(Method::stated).in_situ_m3->value == 215);
}

TEST_CASE("a stated in-situ volume of two materials is split by heap over bulking", "[stated]") {
    ASeason a;
    a.load.stated_in_situ_m3 = 215.4285714286;
    a.lines = {{in_c1, 50}, {in_c2, 50, ripping}};
    const Worked w(a);
    CHECK_THAT(w.by(Method::stated).part(0).in_situ_m3->value, WithinAbs(144, 1e-8));
    CHECK_THAT(w.by(Method::stated).hopper_m3->value, WithinAbs(280, 1e-8));
    const Estimate whole =
        together(*w.by(Method::stated).part(0).in_situ_m3, *w.by(Method::stated).part(1).in_situ_m3);
    CHECK_THAT(whole.u(), WithinAbs(0, 1e-9));  // what one claim has more the other has less
}

TEST_CASE("without bulking a stated in-situ volume stands alone, split by heap", "[stated]") {
    ASeason a;
    a.load.stated_in_situ_m3 = 280;
    a.materials[1].bulking_factor.reset();
    a.lines = {{in_c1, 50}, {in_c2, 50, ripping}};
    const Worked w(a);
    CHECK_FALSE(w.by(Method::stated).hopper_m3);
    CHECK_THAT(w.by(Method::stated).part(0).in_situ_m3->value, WithinAbs(180, 1e-9));
    CHECK(w.assumes(Method::stated, "split by buckets"));
}
