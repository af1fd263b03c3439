// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace spoilbook {

/// What the checks say of a reading. Source: QARTOD (US IOOS), the flag scheme of its manuals (IOC 54:V3).
enum class Flag : std::uint8_t { pass = 1, not_evaluated = 2, suspect = 3, fail = 4, missing = 9 };

/// A reading that statistics count: flag 1 or 2.
constexpr bool counts(Flag flag) {
    return flag == Flag::pass || flag == Flag::not_evaluated;
}

/// What each test said of one reading; kept beside the raw value.
struct Verdicts {
    Flag gap = Flag::not_evaluated;  ///< missing where there is no value; else it has no say
    Flag range = Flag::not_evaluated;
    Flag spike = Flag::not_evaluated;
    Flag rate = Flag::not_evaluated;
    Flag flat = Flag::not_evaluated;

    bool operator==(const Verdicts&) const = default;
};

/// The worst of what the tests say, 9 < 2 < 1 < 3 < 4; missing where there is no value.
Flag overall(const Verdicts& verdicts);

}  // namespace spoilbook
