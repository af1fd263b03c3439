// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <unordered_map>

#include "model/consent/quantity_check.h"
#include "model/consent/what_if.h"

namespace spoilbook {

/// The cells that a load may go to, under every limit on each cell that is about it.
class CellRooms {
 public:
    /// What one such limit leaves, by one reading of the factors.
    void add(const std::vector<MemberRoom>& rooms);
    /// A condition holds the load in that cell and not in others.
    void close(const Id& cell) { closed_.insert(cell); }
    /// Those of the ground that no limit has ruled out yet, in the order of the book. Nil: of any ground.
    [[nodiscard]] std::vector<Id> open(const Season& season, const Id& ground) const;
    /// The open cell of which least is used: by the limit of which most is used there. Those where a load
    /// cannot be valued come last. Empty: none.
    [[nodiscard]] std::string due(const Season& season, const Id& ground) const;

 private:
    std::unordered_map<Id, MemberRoom> rooms_;  ///< share and room by the limit that leaves the cell least
    std::set<Id> closed_;
};

/// Whether a condition may hold a load in one cell and not in another, its own limit on each cell apart: it
/// names cells, or asks that the cell be changed while an event is open.
bool tells_cells_apart(const Condition& condition, const nlohmann::json& body, const Zone& zone);

/// The plan with the load going to that cell, or with no place but its ground where the cell is nil.
PlannedRelease going_to(PlannedRelease planned, const Id& cell);

}  // namespace spoilbook
