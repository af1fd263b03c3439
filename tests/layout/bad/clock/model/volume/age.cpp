// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
long age_s() {
    return std::chrono::system_clock::now().time_since_epoch().count();
}
}  // namespace spoilbook
