// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/field_text.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/record/reading.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

Refusal out_of_range(const Field& field, double value) {
    return {"out-of-range", "", fmt::format("{} is outside the range of {}", number_text(value), field.name),
            "it must be " + range_text(field)};
}

bool is_allowed(const Field& field, std::int64_t value) {
    return field.allowed.empty() ||
           std::find(field.allowed.begin(), field.allowed.end(), value) != field.allowed.end();
}

bool within(const Field& field, double value) {
    return !field.bounded || (value >= field.low && value <= field.high);
}

Checked<Value> parse_degrees_field(const Field& field, std::string_view text) {
    const auto degrees = parse_degrees(text, *field.axis);
    if (!degrees) return degrees.refusals();
    if (!within(field, *degrees)) return out_of_range(field, *degrees);
    return Value{*degrees};
}

Checked<Value> parse_number_field(const Field& field, std::string_view text) {
    if (field.axis) return parse_degrees_field(field, text);
    const auto number = parse_number(text);
    if (!number) {
        return Refusal{"not-a-number", "", fmt::format("\"{}\" is not a number", text),
                       "write it with a point and without group separators"};
    }
    if (!within(field, *number)) return out_of_range(field, *number);
    return Value{*number};
}

Checked<Value> parse_integer_field(const Field& field, std::string_view text) {
    const auto number = parse_integer(text);
    if (!number) {
        return Refusal{"not-a-number", "", fmt::format("\"{}\" is not a whole number", text),
                       "write it as 12"};
    }
    if (!within(field, static_cast<double>(*number)))
        return out_of_range(field, static_cast<double>(*number));
    if (!is_allowed(field, *number)) {
        return Refusal{"out-of-range", "", fmt::format("{} is no {}", *number, field.name),
                       fmt::format("it must be {}", fmt::join(field.allowed, " or "))};
    }
    return Value{*number};
}

Checked<Value> parse_numbers_field(const Field& field, std::string_view text) {
    const auto numbers = parse_numbers(text);
    if (!numbers) {
        return Refusal{"not-a-number", "", fmt::format("\"{}\" is not a list of numbers", text),
                       "write numbers with a point, a space between"};
    }
    for (const double number : *numbers) {
        if (!within(field, number)) return out_of_range(field, number);
    }
    if (!is_allowed(field, static_cast<std::int64_t>(numbers->size()))) {
        return Refusal{"out-of-range", "", fmt::format("{} numbers stand in {}", numbers->size(), field.name),
                       fmt::format("there must be {}", fmt::join(field.allowed, " or "))};
    }
    return Value{numbers_text(*numbers)};
}

Checked<Value> parse_table_field(std::string_view text) {
    const auto table = parse_table(text);
    if (!table) {
        return Refusal{"not-a-table", "", fmt::format("\"{}\" is not a table of numbers", text),
                       "write it as [[0.5, 400], [1.0, 350]]"};
    }
    return Value{table_text(*table)};
}

Checked<Value> parse_json_field(std::string_view text) {
    const auto json = nlohmann::json::parse(text, nullptr, false);
    if (json.is_discarded()) {
        return Refusal{"not-json", "", fmt::format("\"{}\" is not JSON", text),
                       "write it as JSON (RFC 8259)"};
    }
    return Value{json.dump()};
}

Checked<Value> parse_choice_field(const Field& field, std::string_view text) {
    const std::string choice(text);
    if (std::find(field.choices.begin(), field.choices.end(), choice) != field.choices.end())
        return Value{choice};
    return Refusal{"not-a-choice", "", fmt::format("\"{}\" is not a {}", text, field.name),
                   fmt::format("it must be one of {}", fmt::join(field.choices, ", "))};
}

Checked<Value> parse_instant_field(const Field& field, std::string_view text, const Zone& zone) {
    const auto at = field.day_allowed ? parse_instant_or_day(text, zone) : parse_instant(text, zone);
    if (!at) return at.refusals();
    return Value{at->utc_ms};
}

Checked<Value> parse_day_field(std::string_view text) {
    const auto day = parse_day(text);
    if (!day) return day.refusals();
    return Value{day_text(*day)};
}

}  // namespace

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::string range_text(const Field& field) {
    if (!field.bounded) return "";
    const std::string unit = field.unit.empty() ? "" : " " + field.unit;
    return fmt::format("{} to {}{}", number_text(field.low), number_text(field.high), unit);
}

Checked<Value> parse_field(const Field& field, std::string_view text, const Zone& zone) {
    text = trimmed(text);
    if (text.empty()) return Value{};
    switch (field.type) {
        case FieldType::number:
            return parse_number_field(field, text);
        case FieldType::integer:
            return parse_integer_field(field, text);
        case FieldType::instant:
            return parse_instant_field(field, text, zone);
        case FieldType::day:
            return parse_day_field(text);
        case FieldType::choice:
            return parse_choice_field(field, text);
        case FieldType::numbers:
            return parse_numbers_field(field, text);
        case FieldType::table:
            return parse_table_field(text);
        case FieldType::json:
            return parse_json_field(text);
        case FieldType::text:
        case FieldType::reference:
            break;
    }
    return Value{std::string(text)};
}

std::string field_text(const Field& field, const Value& value, const Zone& zone) {
    if (is_blank(value)) return "";
    if (field.type == FieldType::instant) return instant_text(Instant{std::get<std::int64_t>(value)}, zone);
    if (const auto* number = std::get_if<double>(&value)) return number_text(*number);
    if (const auto* whole = std::get_if<std::int64_t>(&value)) return fmt::format("{}", *whole);
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    return hex(std::get<Id>(value));
}

}  // namespace spoilbook
