// SPDX-License-Identifier: GPL-3.0-or-later
// IHO S-44 edition 6.1.0 (October 2022), formula of 3.2.3 and table 1: coefficients seen in text, values
// computed from them outside the project.
#include "model/bed/s44.h"

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("the greatest vertical uncertainty that S-44 allows", "[bed][published]") {
    struct Line {
        const char* order;
        double depth_m, tvu_m;
    };
    for (const auto& [order, depth_m, tvu_m] :
         {Line{"Exclusive", 5, 0.154616}, Line{"Exclusive", 40, 0.335410}, Line{"Special", 5, 0.252797},
          Line{"Special", 20, 0.291548}, Line{"1a", 10, 0.516624}, Line{"1b", 40, 0.721388},
          Line{"2", 5, 1.006591}, Line{"2", 40, 1.358823}}) {
        CAPTURE(order, depth_m);
        CHECK_THAT(s44_order(order)->tvu_m(depth_m), WithinAbs(tvu_m, 5e-7));
    }
}

TEST_CASE("an order is known by its name however it is written", "[bed]") {
    for (const char* name : {"Special", "special", "Special Order", "ORDER SPECIAL"}) {
        REQUIRE(s44_order(name));
        CHECK(s44_order(name)->a_m == 0.25);
    }
    CHECK(s44_order("Order 1a")->a_m == 0.5);
    for (const char* name : {"", "3", "1c", "order", "A"})
        CHECK_FALSE(s44_order(name));
}

TEST_CASE("a bed that dries is as sure as the shore", "[bed]") {
    CHECK(s44_order("1a")->tvu_m(-2) == s44_order("1a")->tvu_m(0));
}

}  // namespace spoilbook::test
