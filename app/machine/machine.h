// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/unit/instant.h"

namespace spoilbook {

/// What only the machine knows. The one place that reads a clock or the environment.

Instant now();

/// The name under which this machine's entries are written: kept in XDG_DATA_HOME/spoilbook/device, made from
/// chance when first asked for. Outside the book, so that a copied book does not make two machines one.
std::string device_name();

}  // namespace spoilbook
