// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "model/record/value.h"
#include "model/unit/position_text.h"

namespace spoilbook {

enum class FieldType {
    text,
    number,
    integer,
    instant,    ///< a time; `day_allowed` lets a bare day stand for its local midnight
    day,        ///< a calendar day, kept as text 2025-09-28
    choice,     ///< one of `choices`
    numbers,    ///< numbers with a space between
    table,      ///< rows of numbers: [[0, 1], [2, 3]]
    json,       ///< any JSON, canonical
    reference,  ///< the row of another kind, given by its label
};

/// One column or member. The single description that the database, the readers, the writers, the command
/// line and the documentation all follow.
struct Field {
    std::string name;
    FieldType type = FieldType::text;
    std::string doc{};
    std::string unit{};
    double low = 0;  ///< least and greatest allowed number, both included; each number of a list or table
    double high = 0;
    bool bounded = false;
    bool day_allowed = false;
    bool added = false;  ///< our own optional column: left out of an export while it is blank everywhere
    int since = 1;  ///< version of the tables that brought it, for a column added to a kind that was there
    std::optional<Axis> axis{};  ///< of a number: degrees on it, given in any way that parse_degrees reads
    std::vector<std::string> choices{};
    std::vector<std::int64_t> allowed{};  ///< of an integer: its values; of numbers: how many; empty: any
    std::string refers_to{};              ///< kind referred to
    std::string within{};  ///< for labels unique only within a parent: the field that names the parent
};

/// How a kind stands in a book folder.
enum class FileForm { csv, json, geojson };

/// One kind of record: one table in the book, one file (or list in a file) in a folder.
struct Kind {
    std::string name;  ///< the word: trip. Also the table's name.
    std::string file;  ///< trips.csv
    FileForm form = FileForm::csv;
    std::string list;                ///< the member that holds the list, for JSON
    std::vector<std::string> label;  ///< fields that name a row; the first alone where unique
    std::vector<Field> fields;
    std::vector<std::pair<std::string, std::string>> ordered;  ///< (start, end) that must not run backwards
    std::string doc;
    bool label_required = true;  ///< false: rows without a label of the trade's own may leave it blank
    int since = 1;               ///< version of the tables that brought it

    [[nodiscard]] std::optional<std::size_t> index_of(std::string_view field) const;
    [[nodiscard]] const Field& field(std::string_view name) const;  ///< throws where there is none
};

/// Every kind, in an order in which each refers only to kinds before it.
const std::vector<Kind>& all_kinds();
/// By its word (trip) or file (trips, trips.csv); null where there is none.
const Kind* find_kind(std::string_view name);
/// By its word; throws where there is none.
const Kind& kind(std::string_view name);

}  // namespace spoilbook
