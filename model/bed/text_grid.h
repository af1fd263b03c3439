// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/unit/byte_source.h"

namespace spoilbook {

/// Why an ESRI ASCII grid is not what it seems, in words; empty where it is. GDAL takes a word for 0 and
/// finds out that numbers are missing only when it comes to them: here every one of the `expected` is read. A
/// decimal comma is one. Throws what `bytes` throws.
std::string why_text_grid_is_unfit(const ByteSource& bytes, std::uint64_t expected);

}  // namespace spoilbook
