// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include "model/unit/time_text.h"

namespace spoilbook {

// What return.json writes for what may be blank: null.

using ReturnJson = nlohmann::ordered_json;

inline ReturnJson text_or_null(const std::string& text) {
    return text.empty() ? ReturnJson(nullptr) : ReturnJson(text);
}

inline ReturnJson instant_or_null(const std::optional<Instant>& at, const Zone& zone) {
    return at ? ReturnJson(instant_text(*at, zone)) : ReturnJson(nullptr);
}

inline ReturnJson number_or_null(const std::optional<double>& value) {
    return value ? ReturnJson(*value) : ReturnJson(nullptr);
}

}  // namespace spoilbook
