// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
long age_s() {
    return std::time(nullptr);
}
}  // namespace spoilbook
