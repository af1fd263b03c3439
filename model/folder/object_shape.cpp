// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/object_shape.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "model/folder/json_text.h"
#include "model/folder/nearest.h"
#include "model/folder/number_member.h"
#include "model/folder/text_shape.h"
#include "model/record/field_text.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// What one value must be; `mend` says it in words.
struct Expected {
    bool (*fits)(const json& value, const ObjectMember& member, const Zone& zone);
    std::string words;
};

std::string_view text_in(const json& value) {
    return value.is_string() ? trimmed(value.get_ref<const std::string&>()) : std::string_view{};
}

bool fits_text(const json& value, const ObjectMember&, const Zone&) {
    return !text_in(value).empty();
}
bool fits_number(const json& value, const ObjectMember& member, const Zone&) {
    if (!value.is_number()) return false;
    const double number = value.get<double>();
    return number >= member.low && number <= member.high;
}
bool fits_choice(const json& value, const ObjectMember& member, const Zone&) {
    return std::find(member.choices.begin(), member.choices.end(), text_in(value)) != member.choices.end();
}
bool fits_when(const json& value, const ObjectMember&, const Zone& zone) {
    return parse_instant_or_day(text_in(value), zone).ok();
}
bool fits_day(const json& value, const ObjectMember&, const Zone&) {
    return parse_day(text_in(value)).ok();
}
bool fits_month_day(const json& value, const ObjectMember&, const Zone&) {
    return is_month_day(text_in(value));
}
bool fits_month_days(const json& value, const ObjectMember&, const Zone&) {
    return is_month_day(text_in(value)) || is_month_day_span(text_in(value));
}
bool fits_clock_span(const json& value, const ObjectMember&, const Zone&) {
    return is_clock_span(text_in(value));
}
bool fits_truth(const json& value, const ObjectMember&, const Zone&) {
    return value.is_boolean();
}

std::string number_words(const ObjectMember& member) {
    if (member.low == -unbounded) return "a number";
    if (member.high == unbounded) return fmt::format("a number from {} up", number_text(member.low));
    return fmt::format("a number from {} to {}", number_text(member.low), number_text(member.high));
}

Expected expected(const ObjectMember& member) {
    switch (member.holds) {
        case Holds::number:
        case Holds::numbers:
            return {fits_number, number_words(member)};
        case Holds::truth:
            return {fits_truth, "true or false"};
        case Holds::choice:
        case Holds::some_of:
            return {fits_choice, fmt::format("one of {}", fmt::join(member.choices, ", "))};
        case Holds::when:
            return {fits_when, "a time such as 2025-09-28T01:30+12:00, or a day"};
        case Holds::days:
            return {fits_day, "a day such as 2025-12-25"};
        case Holds::month_day:
            return {fits_month_day, "a month and a day such as 07-01"};
        case Holds::month_days:
            return {fits_month_days, "days such as 12-25 or 12-20..01-10"};
        case Holds::clock_spans:
            return {fits_clock_span, "hours such as 20:00..06:00"};
        default:
            return {fits_text, "a text"};
    }
}

bool is_list(Holds holds) {
    switch (holds) {
        case Holds::texts:
        case Holds::numbers:
        case Holds::some_of:
        case Holds::days:
        case Holds::month_days:
        case Holds::clock_spans:
        case Holds::objects:
            return true;
        default:
            return false;
    }
}

std::string shown(const json& value) {
    if (value.is_primitive()) return value.dump();
    return what_it_is(value);
}

void refuse_value(const json& value, const ObjectMember& member, const std::string& words,
                  const std::string& path, const JsonReading& reading) {
    const bool range = member.holds == Holds::number && value.is_number();
    reading.refuse(range ? "out-of-range" : "wrong-type", path, fmt::format("{} stands here", shown(value)),
                   fmt::format("{} is {}{}", member.name, is_list(member.holds) ? "a list of: " : "", words));
}

void check_lists(const json& value, const ObjectMember& member, const std::string& path,
                 const JsonReading& reading) {
    if (!value.is_object()) return refuse_value(value, member, "an object of lists", path, reading);
    const ObjectMember list{member.name, Holds::texts};
    for (const auto& [name, items] : value.items()) {
        const std::string at = member_path(path, name);
        if (!items.is_array()) {
            refuse_value(items, list, "texts", at, reading);
            continue;
        }
        for (std::size_t i = 0; i < items.size(); ++i) {
            if (text_in(items[i]).empty()) refuse_value(items[i], list, "texts", item_path(at, i), reading);
        }
    }
}

void check_one(const json& value, const ObjectMember& member, const std::string& path,
               const JsonReading& reading) {
    if (member.holds == Holds::object || member.holds == Holds::objects) {
        if (value.is_object()) return check_object(value, member.shape(), path, reading);
        return refuse_value(value, member, "an object", path, reading);
    }
    const Expected what = expected(member);
    if (!what.fits(value, member, reading.zone)) refuse_value(value, member, what.words, path, reading);
}

void check_member(const json& value, const ObjectMember& member, const std::string& path,
                  const JsonReading& reading) {
    if (member.holds == Holds::lists) return check_lists(value, member, path, reading);
    if (!is_list(member.holds)) return check_one(value, member, path, reading);
    if (!value.is_array()) {
        const bool objects = member.holds == Holds::objects;
        return refuse_value(value, member, objects ? "objects" : expected(member).words, path, reading);
    }
    for (std::size_t i = 0; i < value.size(); ++i)
        check_one(value[i], member, item_path(path, i), reading);
}

/// Of the descriptions under one name, the one that this value is meant to be.
const ObjectMember& meant(const ObjectShape& shape, const ObjectMember& first, const json& value) {
    for (const ObjectMember& member : shape.members) {
        if (member.name != first.name) continue;
        const bool object = member.holds == Holds::object || member.holds == Holds::lists;
        if (value.is_object() == object && value.is_array() == is_list(member.holds)) return member;
    }
    return first;
}

bool stands(const json& object, const std::string& name) {
    const auto found = object.find(name);
    return found != object.end() && !found->is_null();
}

}  // namespace

void check_object(const json& object, const ObjectShape& shape, const std::string& path,
                  const JsonReading& reading) {
    std::vector<std::string> known;
    for (const ObjectMember& member : shape.members) {
        if (!known.empty() && known.back() == member.name) continue;
        known.push_back(member.name);
        if (stands(object, member.name)) {
            const json& value = object.at(member.name);
            check_member(value, meant(shape, member, value), member_path(path, member.name), reading);
        } else if (member.required) {
            reading.refuse("missing-member", member_path(path, member.name),
                           fmt::format("{} is missing", member.name), "add it");
        }
    }
    refuse_unknown(object, known, path, reading);
    for (const auto& group : shape.one_of) {
        const auto count =
            std::count_if(group.begin(), group.end(), [&](const auto& name) { return stands(object, name); });
        if (count == 1) continue;
        reading.refuse("missing-member", path,
                       count == 0 ? fmt::format("none of {} stands here", fmt::join(group, ", "))
                                  : fmt::format("more than one of {} stands here", fmt::join(group, ", ")),
                       "give exactly one");
    }
}

}  // namespace spoilbook
