// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/zone.h"

#include <absl/time/civil_time.h>
#include <absl/time/time.h>

namespace spoilbook {

struct Zone::Impl {
    std::string name;
    absl::TimeZone zone;
};

namespace {

absl::CivilSecond civil(const WallTime& wall) {
    return absl::CivilSecond(wall.day.year, wall.day.month, wall.day.day, wall.hour, wall.minute,
                             wall.second);
}

bool looks_like_a_zone_name(const std::string& name) {
    // The loader would also take file paths and "localtime", whose meaning changes with the machine.
    if (name.empty() || name.front() == '/' || name.front() == ':' || name == "localtime") return false;
    return name.find("..") == std::string::npos && name.rfind("Fixed/", 0) != 0;
}

}  // namespace

Checked<Zone> Zone::named(const std::string& name) {
    absl::TimeZone zone;
    if (!looks_like_a_zone_name(name) || !absl::LoadTimeZone(name, &zone)) {
        return Refusal{"unknown-zone", "", "\"" + name + "\" is not a time zone of the IANA list",
                       "give a name such as Pacific/Auckland"};
    }
    return Zone(std::make_shared<const Impl>(Impl{name, zone}));
}

Zone Zone::utc() {
    return Zone(std::make_shared<const Impl>(Impl{"UTC", absl::UTCTimeZone()}));
}

const std::string& Zone::name() const {
    return impl_->name;
}

WallTime Zone::wall(Instant at) const {
    const auto info = impl_->zone.At(absl::FromUnixMillis(at.utc_ms));
    WallTime wall;
    wall.day = {static_cast<int>(info.cs.year()), info.cs.month(), info.cs.day()};
    wall.hour = info.cs.hour();
    wall.minute = info.cs.minute();
    wall.second = info.cs.second();
    wall.millisecond = static_cast<int>(((at.utc_ms % ms_per_second) + ms_per_second) % ms_per_second);
    wall.offset_s = info.offset;
    return wall;
}

Instant Zone::instant(const WallTime& wall) const {
    const auto info = impl_->zone.At(civil(wall));
    return Instant{absl::ToUnixMillis(info.pre)} + wall.millisecond;
}

Instant Zone::later_instant(const WallTime& wall) const {
    const auto info = impl_->zone.At(civil(wall));
    return Instant{absl::ToUnixMillis(info.post)} + wall.millisecond;
}

std::optional<Instant> Zone::next_change(Instant at) const {
    absl::TimeZone::CivilTransition change;
    if (!impl_->zone.NextTransition(absl::FromUnixMillis(at.utc_ms), &change)) return std::nullopt;
    return Instant{absl::ToUnixMillis(impl_->zone.At(change.to).trans)};
}

Occurs Zone::occurs(const WallTime& wall) const {
    using Kind = absl::TimeZone::TimeInfo;
    switch (impl_->zone.At(civil(wall)).kind) {
        case Kind::SKIPPED:
            return Occurs::never;
        case Kind::REPEATED:
            return Occurs::twice;
        default:
            return Occurs::once;
    }
}

Instant Zone::day_start(Day day) const {
    const auto info = impl_->zone.At(absl::CivilSecond(day.year, day.month, day.day));
    // Where midnight is skipped the day begins at the change itself, not an hour before or after it.
    const bool skipped = info.kind == absl::TimeZone::TimeInfo::SKIPPED;
    return Instant{absl::ToUnixMillis(skipped ? info.trans : info.pre)};
}

}  // namespace spoilbook
