// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include "model/unit/time_text.h"

namespace spoilbook {

// What JSON says of what may be blank: null.

using OrderedJson = nlohmann::ordered_json;

inline OrderedJson text_or_null(const std::string& text) {
    return text.empty() ? OrderedJson(nullptr) : OrderedJson(text);
}

inline OrderedJson instant_or_null(const std::optional<Instant>& at, const Zone& zone) {
    return at ? OrderedJson(instant_text(*at, zone)) : OrderedJson(nullptr);
}

inline OrderedJson number_or_null(const std::optional<double>& value) {
    return value ? OrderedJson(*value) : OrderedJson(nullptr);
}

}  // namespace spoilbook
