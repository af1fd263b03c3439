// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/happened.h"

#include <limits>

#include "model/book/inside.h"
#include "model/book/schema.h"

namespace spoilbook {

namespace {

void run_at(SQLite::Database& db, const std::string& sql, Instant as_at) {
    SQLite::Statement statement(db, sql);
    statement.bind(1, as_at.utc_ms);
    statement.exec();
}

}  // namespace

Book happened_by(const Book& book, Instant as_at, const std::optional<KnownAt>& known) {
    const KnownAt everything{std::nullopt, Instant{std::numeric_limits<std::int64_t>::max()}};
    Book copy = known_at(book, known.value_or(everything));
    auto& db = *copy.inside().db;
    for (const auto& kind : all_kinds()) {
        bool begins = true;
        for (const auto& field : kind.fields) {
            if (field.type != FieldType::instant || field.day_allowed) continue;
            const std::string later = " WHERE " + quoted(field.name) + " > ?";
            if (begins) run_at(db, "UPDATE " + quoted(kind.name) + " SET struck = 1" + later, as_at);
            run_at(db, "UPDATE " + quoted(kind.name) + " SET " + quoted(field.name) + " = NULL" + later,
                   as_at);
            begins = false;
        }
    }
    return copy;
}

}  // namespace spoilbook
