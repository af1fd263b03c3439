// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "forms/works/evidence_sheet.h"
#include "forms/works/figures_source.h"

namespace spoilbook::form {

inline constexpr int evidence_width = 680;

/// What FiguresPage::ask needs to gather the evidence of the limit at this place.
std::function<std::vector<EvidenceRow>(const Figures&)> evidence_of(std::size_t place);

}  // namespace spoilbook::form
