// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/reading.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

template <class T>
const T* held(const Value& value) {
    if (is_blank(value)) return nullptr;
    const T* found = std::get_if<T>(&value);
    if (found == nullptr) throw std::runtime_error("a field of the book holds a value of the wrong type");
    return found;
}

}  // namespace

void read_value(const Value& value, std::string& into) {
    if (const auto* text = held<std::string>(value)) into = *text;
}

void read_value(const Value& value, std::optional<double>& into) {
    if (const auto* number = held<double>(value)) into = *number;
}

void read_value(const Value& value, std::optional<std::int64_t>& into) {
    if (const auto* number = held<std::int64_t>(value)) into = *number;
}

void read_value(const Value& value, std::optional<Instant>& into) {
    if (const auto* ms = held<std::int64_t>(value)) into = Instant{*ms};
}

void read_value(const Value& value, Id& into) {
    if (const auto* id = held<Id>(value)) into = *id;
}

void read_value(const Value& value, std::vector<double>& into) {
    const auto* text = held<std::string>(value);
    if (text == nullptr) return;
    auto numbers = parse_numbers(*text);
    if (!numbers) throw std::runtime_error("a list of numbers in the book does not read: " + *text);
    into = std::move(*numbers);
}

void read_value(const Value& value, Table& into) {
    const auto* text = held<std::string>(value);
    if (text == nullptr) return;
    auto table = parse_table(*text);
    if (!table) throw std::runtime_error("a table in the book does not read: " + *text);
    into = std::move(*table);
}

std::string numbers_text(const std::vector<double>& numbers) {
    std::string text;
    for (const double number : numbers)
        text += (text.empty() ? "" : " ") + number_text(number);
    return text;
}

std::optional<std::vector<double>> parse_numbers(std::string_view text) {
    std::vector<double> numbers;
    std::size_t start = 0;
    while (start < text.size()) {
        const auto end = std::min(text.find(' ', start), text.size());
        if (end > start) {
            const auto number = parse_number(text.substr(start, end - start));
            if (!number) return std::nullopt;
            numbers.push_back(*number);
        }
        start = end + 1;
    }
    return numbers;
}

std::string table_text(const Table& table) {
    std::string text = "[";
    for (const auto& row : table) {
        text += text.size() > 1 ? ",[" : "[";
        for (std::size_t i = 0; i < row.size(); ++i)
            text += (i > 0 ? "," : "") + number_text(row[i]);
        text += "]";
    }
    return text + "]";
}

std::optional<Table> parse_table(std::string_view text) {
    const auto json = nlohmann::json::parse(text, nullptr, false);
    if (!json.is_array()) return std::nullopt;
    Table table;
    for (const auto& row : json) {
        if (!row.is_array()) return std::nullopt;
        auto& numbers = table.emplace_back();
        for (const auto& number : row) {
            if (!number.is_number()) return std::nullopt;
            numbers.push_back(number.get<double>());
        }
    }
    return table;
}

}  // namespace spoilbook
