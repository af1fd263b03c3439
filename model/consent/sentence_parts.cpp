// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/sentence_parts.h"

#include <fmt/format.h>

#include "model/consent/quantity_text.h"
#include "model/unit/number_text.h"

namespace spoilbook::sentence {

namespace {

using nlohmann::json;

/// Digits in groups of three from the point to the left.
std::string grouped(std::string digits) {
    const auto point = std::min(digits.find('.'), digits.find('e'));
    auto place = point == std::string::npos ? digits.size() : point;
    while (place > 3 && digits.find('e') == std::string::npos) {
        place -= 3;
        digits.insert(place, " ");
    }
    return digits;
}

void add_scope(std::string& words, const Members& applies, const char* member, const char* one,
               const char* many) {
    const auto names = applies.texts(member);
    if (names.empty()) return;
    words += fmt::format(", {} {}", names.size() == 1 ? one : many, listed_words(names, "or"));
}

}  // namespace

bool Members::has(const char* name) const {
    return object_.is_object() && object_.contains(name) && !object_.at(name).is_null();
}

std::string Members::text(const char* name) const {
    if (!has(name)) return blank;
    const json& value = object_.at(name);
    if (value.is_number()) return numbered(value.get<double>());
    return value.is_string() && !value.get_ref<const std::string&>().empty() ? value.get<std::string>()
                                                                             : std::string(blank);
}

std::optional<double> Members::number(const char* name) const {
    if (!has(name) || !object_.at(name).is_number()) return std::nullopt;
    return object_.at(name).get<double>();
}

std::string Members::number_or_blank(const char* name, double times) const {
    const auto value = number(name);
    return value ? numbered(*value * times) : blank;
}

bool Members::is_true(const char* name) const {
    return has(name) && object_.at(name).is_boolean() && object_.at(name).get<bool>();
}

const json& Members::object(const char* name) const {
    static const json none = json::object();
    return has(name) && object_.at(name).is_object() ? object_.at(name) : none;
}

const json& Members::list(const char* name) const {
    static const json none = json::array();
    return has(name) && object_.at(name).is_array() ? object_.at(name) : none;
}

std::vector<std::string> Members::texts(const char* name) const {
    if (has(name) && object_.at(name).is_string()) return {object_.at(name).get<std::string>()};
    std::vector<std::string> texts;
    for (const json& one : list(name)) {
        if (one.is_string()) texts.push_back(one.get<std::string>());
    }
    return texts;
}

std::vector<std::string> Members::names() const {
    std::vector<std::string> names;
    if (!object_.is_object()) return names;
    for (const auto& [name, value] : object_.items()) {
        if (!value.is_null()) names.push_back(name);
    }
    return names;
}

std::string numbered(double value) {
    const std::string digits = grouped(number_text(value < 0 ? -value : value));
    return value < 0 ? "−" + digits : digits;
}

std::string listed_words(const std::vector<std::string>& words, const char* last) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) text += i + 1 == words.size() ? fmt::format(" {} ", last) : ", ";
        text += words[i];
    }
    return text;
}

std::string measure_words(const std::string& measure) {
    for (int i = 0; i <= static_cast<int>(LimitMeasure::hours); ++i) {
        Quantity quantity;
        quantity.measure = static_cast<LimitMeasure>(i);
        if (measure_text(quantity.measure) == measure) return unit_text(quantity);
    }
    return measure;
}

std::string span_words(const Members& span) {
    std::string unit = span.text("unit");
    if (const auto place = unit.find('_'); place != std::string::npos) unit[place] = ' ';
    if (span.number("n") == 1 && !unit.empty() && unit.back() == 's') unit.pop_back();
    return span.number_or_blank("n") + " " + unit;
}

std::string clear_words(const json& clear) {
    const Members members(clear);
    const auto sites = members.texts("sites");
    std::string where = "at the site itself";
    if (sites == std::vector<std::string>{"all"})
        where = "at all sites";
    else if (sites == std::vector<std::string>{"same"})
        where = "at the same site";
    else if (!sites.empty())
        where = "at " + listed_words(sites);
    if (!members.has("held_hours")) return "as soon as it is no longer over " + where;
    return fmt::format("after {} h not over {}", members.number_or_blank("held_hours"), where);
}

std::string activity_of(const Members& body) {
    const Members applies(body.object("applies"));
    return applies.has("activity") ? applies.text("activity") : "both";
}

std::string scope_words(const Members& body) {
    const Members applies(body.object("applies"));
    std::string words;
    add_scope(words, applies, "grounds", "at", "at");
    add_scope(words, applies, "cells", "in cell", "in cells");
    add_scope(words, applies, "claims", "from claim", "from claims");
    add_scope(words, applies, "materials", "of the material", "of the materials");
    add_scope(words, applies, "classes", "of what is fit for", "of what is fit for");
    add_scope(words, applies, "plant", "by", "by");
    return words;
}

}  // namespace spoilbook::sentence
