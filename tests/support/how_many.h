// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstdlib>
#include <string>

namespace spoilbook::tests {

/// How often a test goes round that could go on for ever: `usual`, a fifth of it where SPOILBOOK_BRIEF=1
/// (under sanitizers, which take ten times as long), ten times where SPOILBOOK_LONG=1.
inline int how_many(int usual) {
    const auto asked = [](const char* name) {
        const char* word = std::getenv(name);
        return word != nullptr && std::string(word) == "1";
    };
    if (asked("SPOILBOOK_LONG")) return usual * 10;
    return asked("SPOILBOOK_BRIEF") ? std::max(usual / 5, 1) : usual;
}

}  // namespace spoilbook::tests
