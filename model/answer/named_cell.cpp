// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/named_cell.h"

namespace spoilbook {

std::vector<const Cell*> cells_named(const Season& season, const std::string& name, const Id& ground) {
    std::vector<const Cell*> found;
    for (const auto& cell : season.cells.rows()) {
        if (cell.kind == "exclusion" || (ground && cell.ground != ground)) continue;
        const Ground* its = season.grounds.find(cell.ground);
        if (cell.cell == name || (its != nullptr && its->ground + "/" + cell.cell == name))
            found.push_back(&cell);
    }
    return found;
}

}  // namespace spoilbook
