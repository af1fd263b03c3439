// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"

namespace spoilbook {

/// By what released volumes are grouped.
enum class GroupBy { claim, month, ground, cell, material, barge };

std::string group_text(GroupBy by);
std::optional<GroupBy> group_named(const std::string& text);

struct VolumeRow {
    std::vector<std::optional<std::string>> keys;  ///< in the order asked; nothing: it has none
    std::size_t loads = 0, trips = 0;              ///< different ones
    Amounts amounts;                               ///< sums of what is known; blank where no load is
    std::size_t unknown = 0;                       ///< loads whose in-situ volume no method gives: not zero
};

/// What was released with release end ≤ as_at (and within `period`, if given): each load × share. Month,
/// ground and cell are the release's, material and barge the load's, claim the tallies'. Every grouping sums
/// alike. Rows ascend by key, what has none last; without keys there is one row.
std::vector<VolumeRow> volumes(const Ledger& ledger, Instant as_at, const std::vector<GroupBy>& by,
                               std::optional<Period> period = std::nullopt);

/// One release behind a row of volumes: its share of the load, by the method that counts each measure.
struct VolumeLine {
    const LedgerLine* line = nullptr;
    Amounts amounts;  ///< blank what no method gives
};

/// The releases behind the row of `volumes(…, {by})` with this key, ascending by release end. Of a load of
/// several claims only the part of the claim asked for. Points into the ledger.
std::vector<VolumeLine> volume_lines(const Ledger& ledger, Instant as_at, GroupBy by,
                                     const std::optional<std::string>& key);

}  // namespace spoilbook
