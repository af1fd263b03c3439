// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/given.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "model/folder/json_text.h"

namespace spoilbook {

const GivenTable& FolderContents::table(std::string_view kind_name) const {
    const auto found = std::find_if(tables.begin(), tables.end(),
                                    [&](const GivenTable& table) { return table.kind->name == kind_name; });
    if (found == tables.end()) throw std::logic_error("there is no kind " + std::string(kind_name));
    return *found;
}

GivenTable& FolderContents::table(std::string_view kind_name) {
    return const_cast<GivenTable&>(std::as_const(*this).table(kind_name));
}

std::string where(const std::string& file, const GivenRow& row) {
    if (row.line > 0) return fmt::format("{} line {}", file, row.line);
    // A file that is itself a row (a track) is its own place.
    if (row.path.empty() || row.path.starts_with(file + "/")) return row.path.empty() ? file : row.path;
    return fmt::format("{} {}", file, row.path);
}

std::string where(const std::string& file, const GivenRow& row, const std::string& field) {
    if (row.line > 0) return fmt::format("{} line {} column {}", file, row.line, field);
    if (row.path.starts_with(file + "/")) return row.path;
    return fmt::format("{} {}", file, member_path(row.path, field));
}

const Value& value_of(const Kind& kind, const std::vector<Value>& values, std::string_view field) {
    static const Value blank;
    const auto index = kind.index_of(field);
    return index && *index < values.size() ? values[*index] : blank;
}

std::string text_of(const Kind& kind, const std::vector<Value>& values, std::string_view field) {
    const auto* text = std::get_if<std::string>(&value_of(kind, values, field));
    return text == nullptr ? "" : *text;
}

FolderContents empty_folder() {
    FolderContents contents;
    for (const Kind& kind : all_kinds())
        contents.tables.push_back({&kind, kind.file, {}});
    return contents;
}

}  // namespace spoilbook
