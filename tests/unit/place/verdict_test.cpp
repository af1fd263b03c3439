// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/verdict.h"

#include "tests/unit/place/shapes.h"

namespace spoilbook::test {

TEST_CASE("a release is inside or outside only when the position is sure enough to say so",
          "[place][verdict]") {
    CHECK(verdict(20, 10) == PlaceVerdict::inside);
    CHECK(verdict(19.999, 10) == PlaceVerdict::cannot_tell);
    CHECK(verdict(0, 10) == PlaceVerdict::cannot_tell);
    CHECK(verdict(-19.999, 10) == PlaceVerdict::cannot_tell);
    CHECK(verdict(-20, 10) == PlaceVerdict::outside);
    // The scenario's release 80 m outside, and the one mended from the deck log 400 m inside, 60 m unsure.
    CHECK(verdict(-80, 10) == PlaceVerdict::outside);
    CHECK(verdict(400, 60) == PlaceVerdict::inside);
}

TEST_CASE("a position known exactly is inside on the boundary", "[place][verdict]") {
    CHECK(verdict(0, 0) == PlaceVerdict::inside);
    CHECK(verdict(-0.001, 0) == PlaceVerdict::outside);
}

TEST_CASE("no distance and no uncertainty make no verdict", "[place][verdict]") {
    CHECK(verdict(NAN, 10) == PlaceVerdict::cannot_tell);
    CHECK(verdict(100, NAN) == PlaceVerdict::cannot_tell);
    CHECK(verdict(100, -1) == PlaceVerdict::cannot_tell);
    CHECK(verdict(-INFINITY, 10) == PlaceVerdict::outside);
    CHECK(verdict(100, INFINITY) == PlaceVerdict::cannot_tell);
}

TEST_CASE("verdicts have the words of the files", "[place][verdict]") {
    CHECK(text(PlaceVerdict::inside) == "inside");
    CHECK(text(PlaceVerdict::outside) == "outside");
    CHECK(text(PlaceVerdict::cannot_tell) == "cannot_tell");
}

}  // namespace spoilbook::test
