// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "model/folder/match_board.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// What writing a book out goes along with. `board` has the book's rows and an empty folder.
struct Exporting {
    MatchBoard& board;
    const Zone& zone;
    std::map<std::string, std::size_t>& rows;
    Notes& notes;

    /// The text of one field; a reference as its label. A reference to a struck-out row is blank, and noted.
    [[nodiscard]] std::string text(const Kind& kind, const Row& row, const Field& field) const;
    /// The same as JSON; null where it is blank.
    [[nodiscard]] nlohmann::ordered_json json(const Kind& kind, const Row& row, const Field& field) const;
    /// All members of a row but those named, blank ones left out.
    [[nodiscard]] nlohmann::ordered_json members(const Kind& kind, const Row& row,
                                                 std::initializer_list<std::string_view> but) const;
    [[nodiscard]] const std::vector<Row>& held(std::string_view kind) const;
    [[nodiscard]] std::string label(const Kind& kind, const Row& row) const;
};

/// One CSV file; empty text where the kind has no rows.
std::string csv_file(const Exporting& exporting, const Kind& kind);

std::string harbour_file(const Exporting& exporting);
/// Empty texts where there are no rows.
std::string plant_file(const Exporting& exporting);
std::string consents_file(const Exporting& exporting);
std::string claims_file(const Exporting& exporting);
std::string grounds_file(const Exporting& exporting);

}  // namespace spoilbook
