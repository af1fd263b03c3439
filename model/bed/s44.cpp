// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/s44.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>
#include <utility>

namespace spoilbook {

double S44Order::tvu_m(double depth_m) const {
    return std::hypot(a_m, b * std::max(depth_m, 0.0));
}

double S44Order::u_m(double depth_m) const {
    return tvu_m(depth_m) / 1.96;
}

std::optional<S44Order> s44_order(std::string_view name) {
    std::string word;
    for (const char c : name) {
        if (std::isalnum(static_cast<unsigned char>(c)) != 0)
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    if (const auto place = word.find("order"); place != std::string::npos) word.erase(place, 5);
    if (word == "exclusive") return S44Order{0.15, 0.0075};
    if (word == "special") return S44Order{0.25, 0.0075};
    if (word == "1a" || word == "1b") return S44Order{0.5, 0.013};
    if (word == "2") return S44Order{1.0, 0.023};
    return std::nullopt;
}

}  // namespace spoilbook
