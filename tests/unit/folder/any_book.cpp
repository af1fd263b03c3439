// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/unit/folder/any_book.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <stdexcept>

#include "model/record/field_text.h"
#include "model/record/reading.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"
#include "tests/unit/folder/folder_support.h"

namespace spoilbook::test {

namespace {

class AnyBook {
 public:
    explicit AnyBook(unsigned seed) : random_(seed) {}

    Checked<Done> fill(Change& change) {
        for (const Kind& kind : all_kinds()) {
            if (kind.name == "track" || kind.name == "logger_file") continue;
            const std::size_t n = kind.name == "harbour" ? 1 : below(7);
            for (std::size_t i = 0; i < n; ++i) {
                auto values = any_row(kind, i);
                if (values) ids_[kind.name].emplace_back(change.insert(kind, *values), *values);
            }
        }
        return Done{};
    }

 private:
    std::size_t below(std::size_t n) { return n == 0 ? 0 : random_() % n; }
    double share() { return std::uniform_real_distribution<double>(0, 1)(random_); }

    std::string any_text() {
        static const std::vector<std::string> pieces{"calm", ",",    "\"",  "\n", "\r\n", "=1+1", "-",
                                                     "@",    "ā",    "海",  " ",  "'",    ";",    "\r",
                                                     "{}",   "null", "%2F", "/",  "\t",   "0012"};
        std::string text;
        for (std::size_t i = below(6) + 1; i > 0; --i)
            text += pieces[below(pieces.size())];
        text = std::string(trimmed(text));
        return text.empty() ? "x" : text;
    }

    std::string any_json(const Kind& kind, const std::string& field, bool metres) {
        if (field == "campaigns") return R"([{"from":"2025-08-04","name":"first","to":"2026-07-01"}])";
        if (field == "not_working") return R"({"weekends":true,"yearly":["12-20..01-10"]})";
        if (kind.name == "condition") return R"({"due":"2026-01-31","warn_at":[0.5,1]})";
        if (!metres)
            return R"({"coordinates":[[[179.5,-40.6],[179.51,-40.6],[179.51,-40.61],[179.5,-40.6]]],"type":"Polygon"})";
        return R"({"coordinates":[[[[711640,5497370],[711740.25,5497370],[711740,5497450],[711640,5497370]]]],)"
               R"("type":"MultiPolygon"})";
    }

    Value any_value(const Kind& kind, const Field& field, bool metres) {
        const double number = field.low + share() * (field.high - field.low);
        switch (field.type) {
            case FieldType::text:
                return field.name == "year_starts" ? "07-01" : any_text();
            case FieldType::number:
                return below(3) == 0 ? std::clamp(std::round(number), field.low, field.high) : number;
            case FieldType::integer:
                if (!field.allowed.empty()) return field.allowed[below(field.allowed.size())];
                return static_cast<std::int64_t>(number);
            case FieldType::instant:
                return std::int64_t{946684800000} + static_cast<std::int64_t>(share() * 1.9e12);
            case FieldType::day:
                return std::string("2025-0") + std::to_string(1 + below(9)) + "-1" +
                       std::to_string(below(10));
            case FieldType::choice:
                return field.choices[below(field.choices.size())];
            case FieldType::numbers: {
                std::vector<double> numbers{number, field.low, std::min(field.high, field.low + 1)};
                if (!field.allowed.empty())
                    numbers.resize(static_cast<std::size_t>(field.allowed[below(field.allowed.size())]),
                                   number);
                return numbers_text(numbers);
            }
            case FieldType::table:
                return table_text({{0, 20 * share()}, {20 * share(), 1}});
            case FieldType::json:
                return any_json(kind, field.name, metres);
            case FieldType::reference: {
                const auto& others = ids_[field.refers_to];
                return others.empty() ? Value{} : Value{others[below(others.size())].first};
            }
        }
        return {};
    }

    /// Nothing where the kind cannot have a row yet.
    std::optional<std::vector<Value>> any_row(const Kind& kind, std::size_t i) {
        std::vector<Value> values;
        const bool metres = below(2) == 0;
        for (const Field& field : kind.fields) {
            const bool label = !kind.label.empty() && field.name == kind.label.front();
            const bool named = label && kind.label_required;
            if (!named && below(3) == 0) {
                values.emplace_back();
            } else if (label && field.type == FieldType::text) {
                // Buckets of two dredgers may be called the same, and cells of two grounds.
                const bool shared = kind.name == "bucket" || kind.name == "cell";
                values.emplace_back(shared && i < 2 ? "one/of a kind" : any_text() + " " + std::to_string(i));
            } else {
                values.push_back(any_value(kind, field, metres));
            }
        }
        return mend(kind, i, metres, values) ? std::optional(values) : std::nullopt;
    }

    Value& at(const Kind& kind, std::vector<Value>& values, const std::string& field) {
        return values[*kind.index_of(field)];
    }

    bool mend(const Kind& kind, std::size_t i, bool metres, std::vector<Value>& values) {
        for (const auto& [start, end] : kind.ordered) {
            if (at(kind, values, end) < at(kind, values, start))
                at(kind, values, end) = at(kind, values, start);
        }
        if (kind.name == "harbour") {
            at(kind, values, "epsg") = std::int64_t{32760};
            at(kind, values, "zone") = "Pacific/Auckland";
        }
        if (kind.index_of("crs")) at(kind, values, "crs") = metres ? Value{"EPSG:32760"} : Value{};
        if (kind.index_of("crs") && is_blank(at(kind, values, "geometry"))) at(kind, values, "crs") = {};
        if (kind.name == "survey") at(kind, values, "file") = at(kind, values, "digest") = {};
        if (kind.name == "condition" && is_blank(at(kind, values, "kind"))) at(kind, values, "kind") = "text";
        if (kind.name == "condition") {
            at(kind, values, "kind") = "text";
            return any_parent(kind, "consent", i, values);
        }
        if (kind.name == "bucket") return any_parent(kind, "dredger", i, values);
        if (kind.name == "cell") return any_parent(kind, "ground", i, values);
        if (kind.name == "opening") at(kind, values, "condition") = {};
        return true;
    }

    /// A parent of its own for each of the rows that share a label.
    bool any_parent(const Kind& kind, const std::string& field, std::size_t i, std::vector<Value>& values) {
        const auto& parents = ids_[kind.field(field).refers_to];
        if (parents.size() < 2) return false;
        at(kind, values, field) = parents[i % parents.size()].first;
        return true;
    }

    std::mt19937 random_;
    std::map<std::string, std::vector<std::pair<Id, std::vector<Value>>>> ids_;
};

std::string name_of(const Book& book, const Kind& kind, const Id& id) {
    const auto row = book.row(kind, id);
    std::string name;
    for (const std::string& label : kind.label) {
        const Value& value = row->values[*kind.index_of(label)];
        if (const auto* parent = std::get_if<Id>(&value)) {
            name += name_of(book, spoilbook::kind(kind.field(label).refers_to), *parent) + "|";
        } else {
            name += field_text(kind.field(label), value, Zone::utc()) + "|";
        }
    }
    return name;
}

}  // namespace

Book any_book(unsigned seed) {
    Book book = Book::in_memory("office");
    AnyBook any(seed);
    const auto done = book.change(act_at_noon(), [&](Change& change) { return any.fill(change); });
    if (!done) throw std::runtime_error(all_lines(done.refusals()));
    return book;
}

std::vector<std::string> rows_by_name(const Book& book, const Kind& kind) {
    std::vector<std::string> rows;
    for (const Row& row : book.rows(kind)) {
        std::string text;
        for (std::size_t i = 0; i < kind.fields.size(); ++i) {
            const Field& field = kind.fields[i];
            const auto* id = std::get_if<Id>(&row.values[i]);
            text += field.name + "=" +
                    (id != nullptr ? name_of(book, spoilbook::kind(field.refers_to), *id)
                                   : field_text(field, row.values[i], Zone::utc())) +
                    "\n";
        }
        rows.push_back(text);
    }
    std::sort(rows.begin(), rows.end());
    return rows;
}

}  // namespace spoilbook::test
