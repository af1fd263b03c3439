// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

namespace spoilbook {

/// Whether what happened did as a condition asks. Unknown is not compliance: then it cannot be told.
enum class Compliance { complied, cannot_tell, breached };

std::string_view text(Compliance compliance);

}  // namespace spoilbook
