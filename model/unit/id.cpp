// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/id.h"

#include <fmt/format.h>

namespace spoilbook {

std::string hex(const Id& id) {
    std::string text;
    for (const auto byte : id.bytes)
        text += fmt::format("{:02x}", byte);
    return text;
}

}  // namespace spoilbook
