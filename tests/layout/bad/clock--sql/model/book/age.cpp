// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
const char* age_sql() {
    return "SELECT datetime('now')";
}
}  // namespace spoilbook
