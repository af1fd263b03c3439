// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/unit/id.h"

namespace spoilbook::tests {

/// An id that is told from others by one number.
inline Id id_of(std::uint8_t number) {
    Id id;
    id.bytes[15] = number;
    return id;
}

}  // namespace spoilbook::tests
