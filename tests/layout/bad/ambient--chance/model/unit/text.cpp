// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
unsigned draw() {
    return std::random_device{}();
}
}  // namespace spoilbook
