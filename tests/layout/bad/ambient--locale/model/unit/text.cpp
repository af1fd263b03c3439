// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
void point() {
    setlocale(LC_ALL, "C");
}
}  // namespace spoilbook
