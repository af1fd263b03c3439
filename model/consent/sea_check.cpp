// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/kind_checks.h"
#include "model/consent/sea_level.h"

namespace spoilbook {

CheckReason check_sea(const Season& season, SeriesRule rule, const PlannedRelease& planned) {
    const SeaLevel sea(season, std::move(rule));
    const auto given = sea.rule().variable == "wave_height_m" ? planned.wave_height_m : std::nullopt;
    auto answer = sea.at(planned.at, given);
    if (!answer.over) return reason_of(CheckState::cannot_tell, std::move(answer.why));
    return *answer.over ? reason_of(CheckState::hold, std::move(answer.why)) : reason_of(CheckState::clear);
}

}  // namespace spoilbook
