// SPDX-License-Identifier: GPL-3.0-or-later
// An invented return with every kind of block, long and short, for looking at and for comparing bytes.
#pragma once

#include "forms/print/document.h"

namespace spoilbook::print {

/// The whole sample: an answer, facts, tables of all shapes, a landscape schedule of `trips` rows, a
/// signature.
Document sample_document(int trips);

}  // namespace spoilbook::print
