// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
int next() {
    static int last = 0;
    return ++last;
}
}  // namespace spoilbook
