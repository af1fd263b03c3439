// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/by_hand.h"

#include <algorithm>
#include <array>

#include "model/folder/text_shape.h"
#include "model/record/table_check.h"
#include "model/unit/zone.h"

namespace spoilbook {

namespace {

bool comes_with_a_folder(const Kind& kind, const Field& field) {
    constexpr std::array kept{"survey", "track", "logger_file"};
    const bool is_kept = std::find(kept.begin(), kept.end(), kind.name) != kept.end();
    // A condition's kind says what its other members must be: it comes with them.
    return field.type == FieldType::json || (kind.name == "condition" && field.name == "kind") ||
           (kind.name == "harbour" && field.name == "epsg") ||
           (is_kept && (field.name == "file" || field.name == "digest"));
}

// What a person types is looked up again at once; an old book's odd table is noted and kept.
std::optional<Refusal> why_no_table(const std::string& where, const Field& field, const std::string& text) {
    const auto table = parse_table(text);
    if (!table) return std::nullopt;
    for (const TableFinding& finding : check_table(field.name, *table)) {
        if (finding.grade == TableGrade::odd) continue;
        const std::string row = finding.row ? "row " + std::to_string(*finding.row + 1) + ": " : "";
        return Refusal{finding.code, where, row + finding.what, finding.mend};
    }
    return std::nullopt;
}

}  // namespace

std::optional<Refusal> why_not_by_hand(const Kind& kind, const Field& field, const Value& value) {
    const std::string where = kind.name + " " + field.name;
    if (comes_with_a_folder(kind, field)) {
        return Refusal{"not-logged", where, field.name + " is not written by hand",
                       "bring the " + kind.name + " with a book folder"};
    }
    if (kind.name == "shift" && (field.name == "signed_by" || field.name == "signed_at")) {
        return Refusal{"not-logged", where, "a signature is not written by hand",
                       "sign the shift (sbk sign, or the barge desk): then name and time are kept with it"};
    }
    const auto* text = std::get_if<std::string>(&value);
    if (text == nullptr) return std::nullopt;
    if (kind.name == "harbour" && field.name == "zone") {
        if (const auto zone = Zone::named(*text); !zone) {
            return Refusal{"unknown-zone", where, "\"" + *text + "\" is no time zone that this machine knows",
                           "write its IANA name, such as Pacific/Auckland"};
        }
    }
    if (kind.name == "consent" && field.name == "year_starts" && !is_month_day(*text))
        return Refusal{"not-a-time", where, "\"" + *text + "\" is not MM-DD",
                       "write a month and a day such as 07-01"};
    if (field.type == FieldType::table) return why_no_table(where, field, *text);
    return std::nullopt;
}

}  // namespace spoilbook
