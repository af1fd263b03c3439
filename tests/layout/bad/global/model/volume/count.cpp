// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
int loads_seen = 0;
}  // namespace spoilbook
