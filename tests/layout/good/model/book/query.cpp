// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>

#include "model/unit/metres.h"

namespace spoilbook {
const char* loads_sql() {
    return "SELECT id FROM loads";
}
}  // namespace spoilbook
