// SPDX-License-Identifier: GPL-3.0-or-later
// A position that was written down in any of the ways in use is the same position when it is read.
#include <fmt/format.h>
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <cmath>

#include "model/unit/position_text.h"

using namespace spoilbook;

namespace {

/// A position in whole ten-thousandths of a second of arc, the finest that is written here: nothing is
/// rounded on the way.
struct Place {
    Axis axis;
    std::int64_t tenths_of_ms;  ///< of arc, not of time

    [[nodiscard]] char letter() const {
        const bool below = tenths_of_ms < 0;
        return axis == Axis::latitude ? (below ? 'S' : 'N') : (below ? 'W' : 'E');
    }
    [[nodiscard]] double degrees() const { return static_cast<double>(tenths_of_ms) / 36'000'000.0; }
};

Place any_place() {
    const auto axis = *rc::gen::element(Axis::latitude, Axis::longitude);
    const std::int64_t most = (axis == Axis::latitude ? 90 : 180) * std::int64_t{36'000'000};
    return {axis, *rc::gen::inRange<std::int64_t>(-most, most + 1)};
}

/// The figures with `parts` of them, and the signs between: "41°12.3450'", "41 12 20.7000".
std::string figures(std::int64_t size, int parts, const std::vector<std::string>& marks) {
    const auto degrees = size / 36'000'000;
    if (parts == 1) return fmt::format("{:.10f}{}", static_cast<double>(size) / 36'000'000.0, marks[0]);
    const auto rest = size % 36'000'000;
    if (parts == 2)
        return fmt::format("{}{}{:.8f}{}", degrees, marks[0], static_cast<double>(rest) / 600'000.0,
                           marks[1]);
    return fmt::format("{}{}{}{}{:.4f}{}", degrees, marks[0], rest / 600'000, marks[1],
                       static_cast<double>(rest % 600'000) / 10'000.0, marks[2]);
}

std::string written(const Place& place) {
    using Marks = std::vector<std::string>;
    const auto marks =
        *rc::gen::element(Marks{"°", "'", "\""}, Marks{"° ", "' ", "\" "}, Marks{" ", " ", " "},
                          Marks{"°", "′", "″"}, Marks{"º", "’", "”"}, Marks{" deg ", " min ", " sec "},
                          Marks{"-", "-", ""}, Marks{"°\u00a0", "'\u202f", "''"});
    const int parts = *rc::gen::inRange(1, 4);
    std::string text = figures(std::abs(place.tenths_of_ms), parts, marks);
    // A hyphen parts figures; behind the last of them nothing is to be parted.
    while (text.back() == '-')
        text.pop_back();
    const auto letter = *rc::gen::element(std::string(1, place.letter()),
                                          std::string(1, static_cast<char>(std::tolower(place.letter()))));
    const std::string gap = *rc::gen::element<std::string>("", " ");
    switch (*rc::gen::inRange(0, 3)) {
        case 0:
            return letter + gap + text;
        case 1:
            return text + gap + letter;
        default:
            break;
    }
    // A minus says the half of the earth by itself; without one only degrees alone are clear.
    if (place.tenths_of_ms < 0) return "-" + text;
    return parts == 1 ? text : text + letter;
}

}  // namespace

TEST_CASE("a position written in any of the ways in use reads back as itself", "[property]") {
    rc::prop("reads back", [] {
        const Place place = any_place();
        const std::string text = written(place);
        RC_LOG() << text << "\n";
        const auto read = parse_degrees(text, place.axis);
        RC_ASSERT(read.ok());
        // A ten-thousandth of a second of arc is 3 mm on the ground, and none of it may be lost.
        RC_ASSERT(std::abs(*read - place.degrees()) < 1e-9);
    });
}

TEST_CASE("the letter of the other half mirrors a position, that of the other axis is refused",
          "[property]") {
    rc::prop("letters", [] {
        const Place place = any_place();
        const std::string text =
            figures(std::abs(place.tenths_of_ms), *rc::gen::inRange(1, 4), {"°", "'", "\""});
        const bool is_latitude = place.axis == Axis::latitude;
        const auto positive = parse_degrees(text + (is_latitude ? "N" : "E"), place.axis);
        const auto negative = parse_degrees(text + (is_latitude ? "S" : "W"), place.axis);
        RC_ASSERT(*positive == -*negative);
        for (const char* letter : {"N", "S", "E", "W"}) {
            const bool own = (letter[0] == 'N' || letter[0] == 'S') == is_latitude;
            RC_ASSERT(parse_degrees(text + letter, place.axis).ok() == own);
        }
    });
}

TEST_CASE("no text that is given for a position is taken for more than degrees, or breaks the reading",
          "[property]") {
    rc::prop("any text", [] {
        const auto text = *rc::gen::container<std::string>(
            rc::gen::weightedOneOf<char>({{6, rc::gen::elementOf(std::string("0123456789.-' \"NSEWnsew"))},
                                          {1, rc::gen::arbitrary<char>()}}));
        const auto read = parse_degrees(text, *rc::gen::element(Axis::latitude, Axis::longitude));
        if (read) RC_ASSERT(std::isfinite(*read));
        if (!read) RC_ASSERT(!read.refusals().front().mend.empty());
    });
}
