// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "model/folder/complaints.h"
#include "model/record/kind.h"
#include "model/unit/refusal.h"

namespace spoilbook {

/// One row as a folder gives it: values in the kind's field order, a reference as its label's text.
struct GivenRow {
    std::uint32_t line = 0;  ///< of a CSV file
    std::string path;        ///< in a JSON file: barges[2]
    std::vector<Value> values;
    bool at_fault = false;  ///< something in it was refused: not to be compared with the book
};

/// The rows of one kind, in the order of their file.
struct GivenTable {
    const Kind* kind = nullptr;
    std::string file;
    std::vector<GivenRow> rows;
};

/// A file that is kept as it came. Its bytes are read again when the import lands, and refused where their
/// digest is no longer this one.
struct GivenFile {
    std::string path;    ///< on this machine
    std::string name;    ///< in the folder: tracks/T-0412.gpx
    std::string digest;  ///< SHA-256, 64 hexadecimal digits
};

/// What a folder holds, read and checked by itself, and every reason why it may not land; nothing is looked
/// up in a book yet.
struct FolderContents {
    std::string zone;                ///< in which times without an offset were read
    std::optional<int> epsg;         ///< of the harbour, else of the book
    std::vector<GivenTable> tables;  ///< one a kind, in the order of all_kinds(), also where it has no rows
    std::vector<GivenFile> files;
    Complaints complaints;

    [[nodiscard]] const GivenTable& table(std::string_view kind) const;
    [[nodiscard]] GivenTable& table(std::string_view kind);
};

/// "trips.csv line 4", "plant.json barges[2]"; with a field "trips.csv line 4 column lat",
/// "plant.json barges[2].capacity_m3".
std::string where(const std::string& file, const GivenRow& row);
std::string where(const std::string& file, const GivenRow& row, const std::string& field);

/// Value of a named field; blank where the kind has no such field.
const Value& value_of(const Kind& kind, const std::vector<Value>& values, std::string_view field);
/// Its text; empty where it is blank or not a text.
std::string text_of(const Kind& kind, const std::vector<Value>& values, std::string_view field);

/// A folder without rows: a table for every kind.
FolderContents empty_folder();

}  // namespace spoilbook
