// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
namespace spoilbook {
struct Metres {
    double value;
};
constexpr double kLongest_m = 50.0;
}  // namespace spoilbook
