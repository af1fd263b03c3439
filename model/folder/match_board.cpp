// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/match_board.h"

#include <fmt/format.h>

#include <stdexcept>

#include "model/folder/planned_id.h"
#include "model/record/field_text.h"

namespace spoilbook {

MatchBoard::MatchBoard(FolderContents folder, const Book* beside)
    : contents(std::move(folder)), book(beside), complaints(std::move(contents.complaints)) {
    for (const GivenTable& table : contents.tables) {
        KindShelf& shelf_of_kind = shelves.emplace_back(*table.kind);
        if (book != nullptr) shelf_of_kind.hold(book->rows(*table.kind));
        ids.emplace_back(table.rows.size());
    }
}

std::size_t MatchBoard::table_of(std::string_view kind) const {
    for (std::size_t i = 0; i < shelves.size(); ++i) {
        if (shelves[i].kind().name == kind) return i;
    }
    throw std::logic_error("there is no kind " + std::string(kind));
}

const std::vector<Value>* MatchBoard::values(std::string_view kind, const Id& id) const {
    if (id.is_nil()) return nullptr;
    if (const auto planned = planned_row(id))
        return &contents.tables[planned->table].rows[planned->row].values;
    const Row* row = shelves[table_of(kind)].held(id);
    return row == nullptr ? nullptr : &row->values;
}

Id MatchBoard::reference(const Kind& kind, const std::vector<Value>& values, std::string_view field) {
    const auto* id = std::get_if<Id>(&value_of(kind, values, field));
    return id == nullptr ? Id{} : *id;
}

std::string MatchBoard::label(std::string_view kind, const Id& id) const {
    const auto* found = values(kind, id);
    const Kind& described = shelves[table_of(kind)].kind();
    if (found == nullptr || described.label.empty()) return "";
    return text_of(described, *found, described.label.front());
}

std::string MatchBoard::shown(const Field& field, const Value& value) const {
    if (is_blank(value)) return "nothing";
    if (const auto* id = std::get_if<Id>(&value)) {
        const std::string name = label(field.refers_to, *id);
        return name.empty() ? "another" : fmt::format("\"{}\"", name);
    }
    const auto zone = Zone::named(contents.zone);
    const std::string text = field_text(field, value, zone ? *zone : Zone::utc());
    constexpr std::size_t long_text = 200;
    if (text.size() > long_text) return fmt::format("\"{}…\" ({} bytes)", text.substr(0, 60), text.size());
    return fmt::format("\"{}\"", text);
}

bool MatchBoard::is_fresh(std::size_t table, std::size_t row) const {
    return planned_row(ids[table][row]).has_value();
}

}  // namespace spoilbook
