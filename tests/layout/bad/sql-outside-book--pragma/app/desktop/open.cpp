// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
const char* mode_sql() {
    return "PRAGMA journal_mode = WAL";
}
}  // namespace spoilbook
