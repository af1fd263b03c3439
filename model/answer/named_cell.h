// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/season.h"

namespace spoilbook {

/// The cells that a name may mean: "A1", in any ground or the one given, or "Gannet Patch/A1". Exclusions are
/// none. More than one where several grounds have a cell of that name.
std::vector<const Cell*> cells_named(const Season& season, const std::string& name, const Id& ground = {});

}  // namespace spoilbook
