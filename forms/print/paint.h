// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "forms/print/paginate.h"

namespace spoilbook::print {

/// The pages as Qt's PDF, with Qt's own creation date in it. Throws std::runtime_error if Qt cannot paint.
std::string paint_pdf(const std::vector<Page>& pages);

}  // namespace spoilbook::print
