// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/held_values.h"

#include "model/book/inside.h"
#include "model/book/row_store.h"
#include "model/book/schema.h"
#include "model/book/snapshot.h"

namespace spoilbook {

std::unordered_map<Id, std::vector<bool>> held_values(const Book& book, const Kind& kind) {
    return read_from(book, [&] {
        SQLite::Statement statement(*book.inside().db, select_sql(kind, "WHERE struck IS NULL"));
        std::unordered_map<Id, std::vector<bool>> held;
        while (statement.executeStep()) {
            auto& row = held[id_from(statement.getColumn(0))];
            row.resize(kind.fields.size());
            for (std::size_t i = 0; i < row.size(); ++i)
                row[i] = !statement.isColumnNull(static_cast<int>(first_field_column + i));
        }
        return held;
    });
}

}  // namespace spoilbook
