// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
const char* home() {
    return std::getenv("HOME");
}
}  // namespace spoilbook
