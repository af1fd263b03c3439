// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/book.h"

#include <sqlite3.h>

#include "model/book/book_error.h"
#include "model/book/change.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/row_store.h"
#include "model/book/schema.h"
#include "model/book/stored_file.h"
#include "model/book/write.h"

namespace spoilbook {

Checked<std::optional<EntryName>> Book::change(const Act& act,
                                               const std::function<Checked<Done>(Change&)>& body) {
    return write(*this, act, [&](OpenChange& change) { return body(change); });
}

std::vector<Row> Book::rows(const Kind& kind, bool struck_too) const {
    return read_from(*this, [&] {
        SQLite::Statement statement(
            *inside_->db,
            select_sql(kind, struck_too ? "ORDER BY uuid" : "WHERE struck IS NULL ORDER BY uuid"));
        std::vector<Row> found;
        while (statement.executeStep())
            found.push_back(row_from(statement, kind));
        return found;
    });
}

std::optional<Row> Book::row(const Kind& kind, const Id& id) const {
    return read_from(*this, [&] {
        auto& statement = inside_->prepared(select_sql(kind, "WHERE uuid = ?"));
        bind_id(statement, 1, id);
        std::optional<Row> found;
        if (statement.executeStep()) found = row_from(statement, kind);
        statement.reset();
        return found;
    });
}

std::optional<Row> Book::labelled(const Kind& kind, const std::string& label,
                                  const std::optional<Id>& parent) const {
    if (kind.label.empty()) return std::nullopt;
    std::string where = "WHERE " + quoted(kind.label.front()) + " = ? AND struck IS NULL";
    const bool within = parent && kind.label.size() > 1;
    if (within) where += " AND " + quoted(kind.label[1]) + " = ?";
    return read_from(*this, [&] {
        auto& statement = inside_->prepared(select_sql(kind, where + " ORDER BY uuid DESC LIMIT 1"));
        statement.bind(1, label);
        if (within) bind_id(statement, 2, *parent);
        std::optional<Row> found;
        if (statement.executeStep()) found = row_from(statement, kind);
        statement.reset();
        return found;
    });
}

std::string Book::label_of(const Kind& kind, const Id& id) const {
    const auto found = row(kind, id);
    if (!found || kind.label.empty()) return hex(id);
    const auto& label = found->values[*kind.index_of(kind.label.front())];
    const auto* text = std::get_if<std::string>(&label);
    return text != nullptr ? *text : hex(id);
}

std::optional<std::string> Book::material(const std::string& digest) const {
    if (inside_->files) return inside_->files->material(digest);
    return read_from(*this, [&] { return load_file(*this, digest); });
}

}  // namespace spoilbook
