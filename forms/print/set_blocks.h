// SPDX-License-Identifier: GPL-3.0-or-later
// Turns blocks into pieces for a text column of the given room. Needs a QGuiApplication.
#pragma once

#include "forms/print/document.h"
#include "forms/print/piece.h"

namespace spoilbook::print {

Pieces set_title(const Document& document, const Room& room);
Pieces set_heading(const Heading& heading, const Room& room);
Pieces set_paragraph(const Paragraph& paragraph, const Room& room);
Pieces set_answer(const Answer& answer, const Room& room);
Pieces set_facts(const Facts& facts, const Room& room);
Pieces set_signature(const Signature& signature, const Room& room);

/// Throws std::invalid_argument where a row has more cells than the table has columns, or there is no column.
Pieces set_table(const Table& table, const Room& room);

/// Any block but PageBreak, which parts sections and sets nothing; inside KeepTogether it is
/// std::invalid_argument.
Pieces set_block(const Block& block, const Room& room);

}  // namespace spoilbook::print
