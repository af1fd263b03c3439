// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "model/consent/release_check.h"
#include "model/turbidity/series_rule.h"

namespace spoilbook {

// What one condition says of a planned release, kind by kind, one file each: the state, until when it holds,
// and why. The ledger is that of the season with the planned release; `line` is that release in it.

/// Kind time: at the instant when the doors would open.
CheckReason check_time(const Ledger& ledger, const nlohmann::json& body, const PlannedRelease& planned);

/// Whether a rule of kind time that holds the plan is known to hold all the time until `to`.
bool time_holds_to(const Ledger& ledger, const nlohmann::json& body, const PlannedRelease& planned,
                   Instant to);

/// Kind series of wave height or wind: the height given, else the last observation (sea_level.h). No time
/// ends it.
CheckReason check_sea(const Season& season, SeriesRule rule, const PlannedRelease& planned);

/// Kind series of turbidity: only where a response of its tier is to stop or to change the cell. While an
/// event is open, stop holds; change_cell holds a release in the cell that was in use as the event began,
/// that of the last release before it. Only the all-clear ends it. Cannot tell where a site cannot, or the
/// loggers were not asked.
CheckReason check_water(const Ledger& ledger, const Condition& condition, const SeriesRule& rule,
                        const LedgerLine& line, const CheckFacts& facts);

/// Whether a rule on turbidity asks, while an event is open, that the cell be changed, and not to stop.
bool asks_to_change_cell(const SeriesRule& rule);

/// Kind surface: only where a response to it is to stop. A bed of the release's ground or cell that was past
/// it by the newest survey that could tell holds, and no time ends that but another survey's. Cannot tell
/// where the newest cannot, or where it is another cell of the ground and the release's is not known. Without
/// a survey nothing holds.
CheckReason check_surface(const Condition& condition, const LedgerLine& line, const CheckFacts& facts);

/// Kind record: the allowed sets; what must be on record of the release is judged after it.
CheckReason check_record(const Ledger& ledger, const nlohmann::json& body, const LedgerLine& line);

/// Kind watch: a sighting on record in the load's last trip holds until the water was clear for its time. A
/// watch that is still to be kept is no doubt: it is told beside, see watch_to_keep.
CheckReason check_watch(const Season& season, const nlohmann::json& body, const PlannedRelease& planned,
                        const CheckFacts& facts);
/// What is still to be done for it before the doors open; nothing where the watch on record began in time.
std::optional<CheckTask> watch_to_keep(const Season& season, const nlohmann::json& body,
                                       const PlannedRelease& planned, const CheckFacts& facts);

}  // namespace spoilbook
