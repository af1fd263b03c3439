// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
void say(int loads) {
    std::cout << loads;
}
}  // namespace spoilbook
