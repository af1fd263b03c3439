// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "model/record/kind.h"
#include "model/unit/checked.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// Text as a person or a file gives it → the stored value of one field. Blank text is a blank value. Trims at
/// both ends. Refuses what does not parse, a number outside the field's range, a choice that is not one; the
/// refusal's `where` is left empty for the caller. References are not looked up here: their label comes
/// back as text. Times without an offset are read in `zone`.
Checked<Value> parse_field(const Field& field, std::string_view text, const Zone& zone);

/// Stored value → the text a folder carries; blank → "". Instants with the zone's offset. A reference's value
/// must already be its label's text.
std::string field_text(const Field& field, const Value& value, const Zone& zone);

/// The range of a field in words, for refusals and docs: "0 to 50 m"; empty where there is none.
std::string range_text(const Field& field);

/// Spaces and tabs cut off at both ends.
std::string_view trimmed(std::string_view text);

}  // namespace spoilbook
