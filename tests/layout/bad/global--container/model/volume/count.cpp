// SPDX-License-Identifier: GPL-3.0-or-later
namespace spoilbook {
static std::map<std::string, double> factors;
}  // namespace spoilbook
