// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
const char* loads_sql() {
    return R"(
        UPDATE loads SET barge = ?
    )";
}
}  // namespace spoilbook
