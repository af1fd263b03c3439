// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
const char* loads_sql() {
    return "select id, barge from loads";
}
}  // namespace spoilbook
