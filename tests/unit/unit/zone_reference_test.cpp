// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cstdio>
#include <memory>
#include <sstream>

#include "model/unit/zone.h"

using namespace spoilbook;

namespace {

/// python's zoneinfo (a reference library, asked at test time): the clock of several zones every 31 hours and
/// in the seconds about each year's changes, to 2060. COMP.
constexpr const char* reference = R"(
import datetime as d, zoneinfo as z
u = d.timezone.utc
for name in ['Pacific/Auckland','Europe/Berlin','America/St_Johns','Asia/Kathmandu','America/Santiago','Australia/Lord_Howe','Pacific/Chatham','America/New_York']:
    zone = z.ZoneInfo(name)
    t = d.datetime(2020, 1, 1, tzinfo=u)
    while t < d.datetime(2060, 1, 1, tzinfo=u):
        w = t.astimezone(zone)
        print(name, int(t.timestamp()), w.year, w.month, w.day, w.hour, w.minute, int(w.utcoffset().total_seconds()))
        t += d.timedelta(hours=31, seconds=7)
)";

}  // namespace

TEST_CASE("clocks agree with a reference library to 2060, after the zone file's own list ends",
          "[time][reference]") {
    const std::string command = std::string("python3 - <<'EOF'") + reference + "EOF";
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    REQUIRE(pipe);
    char line[200];
    std::size_t lines = 0;
    std::size_t wrong = 0;
    while (std::fgets(line, sizeof line, pipe.get()) != nullptr) {
        std::istringstream in(line);
        std::string name;
        std::int64_t seconds = 0;
        WallTime expected;
        in >> name >> seconds >> expected.day.year >> expected.day.month >> expected.day.day >>
            expected.hour >> expected.minute >> expected.offset_s;
        const Zone zone = *Zone::named(name);
        const auto wall = zone.wall(Instant{seconds * ms_per_second});
        const bool same = wall.day == expected.day && wall.hour == expected.hour &&
                          wall.minute == expected.minute && wall.offset_s == expected.offset_s;
        wrong += same ? 0 : 1;
        if (!same && wrong < 5) WARN(line);
        ++lines;
    }
    CHECK(lines > 80000);
    CHECK(wrong == 0);
}
