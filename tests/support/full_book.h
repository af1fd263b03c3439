// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "tests/support/tiny_season.h"

namespace spoilbook::tests {

/// Some value that a field takes, `n` telling rows apart.
inline Value some_value(const Field& field, const std::map<std::string, Id>& known, int n) {
    switch (field.type) {
        case FieldType::number:
            return field.bounded ? field.low + (field.high - field.low) / (4.0 + n) : 1.0 + n;
        case FieldType::integer:
            return static_cast<std::int64_t>(field.low);
        case FieldType::instant:
            return time_of(morning(n));
        case FieldType::choice:
            return field.choices.at(static_cast<std::size_t>(n) % field.choices.size());
        case FieldType::reference: {
            const auto place = known.find(field.refers_to);
            return place == known.end() ? Value{} : Value{place->second};
        }
        case FieldType::day:
            return std::string("2025-03-03");
        case FieldType::numbers:
            return std::string("1.5 2");
        case FieldType::table:
            return std::string("[[0,1],[2,3]]");
        case FieldType::json:
            return std::string("[]");
        default:
            return "text " + std::to_string(n);
    }
}

/// Bytes that do not pack.
inline std::string unlike_itself(std::size_t size) {
    std::string bytes(size, '\0');
    std::uint32_t x = 12345;
    for (auto& byte : bytes) {
        x = x * 1664525 + 1013904223;
        byte = static_cast<char>(x >> 24);
    }
    return bytes;
}

/// One row of every kind with every field filled, each kind by an entry of its own; a file of two chunks and
/// a small one; and a correction, an undo and a strike. Nothing of it is signed.
inline void log_one_of_everything(Book& book) {
    std::map<std::string, Id> known;
    int n = 0;
    for (const auto& kind : all_kinds()) {
        Fields fields;
        for (const auto& field : kind.fields) {
            if (field.name != "signed_at") fields.emplace_back(field.name, some_value(field, known, n));
        }
        known[kind.name] = log_row(book, by("Ana", ++n), kind.name, fields);
    }
    const auto keep = [&](const std::string& bytes) {
        book.change(by("Ana", ++n),
                    [&](Change& change) -> Checked<Done> {
                        change.keep(bytes).value();
                        return Done{};
                    })
            .value();
    };
    keep(unlike_itself(1'100'000));
    keep("a short track");
    set_field(book, by("Ben", ++n), "barge", known["barge"], "name", std::string("Tuatua")).value();
    set_field(book, by("Ben", ++n), "barge", known["barge"], "name", std::string("Toheroa")).value();
    undo(book, by("Ben", ++n)).value();
    strike_row(book, by("Ben", ++n), "tally", known["tally"]).value();
}

}  // namespace spoilbook::tests
