// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/press_words.h"

#include <fmt/format.h>

#include <cmath>
#include <ranges>

#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

std::size_t digits_at_end(const std::string& label) {
    std::size_t digits = 0;
    while (digits < label.size() && digits < 15) {
        const char c = label[label.size() - 1 - digits];
        if (c < '0' || c > '9') break;
        ++digits;
    }
    return digits;
}

std::string usual_prefix(const Kind& kind) {
    static const std::map<std::string, std::string> prefixes{
        {"shift", "S-"}, {"station", "ST-"}, {"load", "L-"},      {"trip", "T-"},     {"release", "R-"},
        {"delay", "D-"}, {"tally", "TA-"},   {"sounding", "SD-"}, {"handover", "H-"}, {"crew", "CR-"},
        {"watch", "W-"}, {"event", "E-"},    {"find", "F-"}};
    const auto place = prefixes.find(kind.name);
    return place == prefixes.end() ? kind.name + "-" : place->second;
}

}  // namespace

std::string label_after(const std::string& label) {
    const std::size_t digits = digits_at_end(label);
    if (digits == 0) return label + "-2";
    const std::string prefix = label.substr(0, label.size() - digits);
    const auto number = parse_integer(label.substr(label.size() - digits)).value_or(0);
    return fmt::format("{}{:0{}}", prefix, number + 1, digits);
}

std::string next_label_of(const Book& book, const Kind& kind) {
    const auto place = *kind.index_of(kind.label.front());
    const auto rows = book.rows(kind, true);
    for (const auto& row : rows | std::views::reverse) {
        const auto* label = std::get_if<std::string>(&row.values[place]);
        if (label == nullptr) continue;
        const std::size_t digits = digits_at_end(*label);
        if (digits == 0) continue;
        return next_label(book, kind, label->substr(0, label->size() - digits), static_cast<int>(digits));
    }
    return next_label(book, kind, usual_prefix(kind));
}

std::string PressWords::now() const {
    return instant_text(press_.at, press_.season.zone);
}

std::string PressWords::fresh(const Kind& kind) {
    auto& newest = given_[kind.name];
    newest = newest.empty() ? next_label_of(press_.book, kind) : label_after(newest);
    return newest;
}

void PressWords::text(LogLine& line, const char* column, const std::string& text) {
    if (!text.empty()) line.inputs.push_back({column, text});
}

void PressWords::number(LogLine& line, const char* column, std::optional<double> value, int decimals) {
    if (!value) return;
    const double scale = decimals < 0 ? 1 : std::pow(10.0, decimals);
    const double rounded = decimals < 0 ? *value : std::round(*value * scale) / scale;
    line.inputs.push_back({column, number_text(rounded)});
}

}  // namespace spoilbook
