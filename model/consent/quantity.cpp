// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/quantity.h"

#include <array>
#include <nlohmann/json.hpp>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

constexpr std::array measures{"in_situ_m3", "hopper_m3", "wet_t", "dry_t", "trips", "days", "hours"};
constexpr std::array eaches{"none", "claim", "ground", "cell", "material", "plant"};
constexpr std::array window_kinds{"term", "calendar", "consent_year", "rolling",
                                  "mean", "campaign", "phase",        "trip"};

template <class List>
std::optional<std::size_t> place_in(const List& list, const std::string& text) {
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (text == list[i]) return i;
    }
    return std::nullopt;
}

std::vector<std::string> names(const json& object, const char* member) {
    return object.contains(member) ? object.at(member).get<std::vector<std::string>>()
                                   : std::vector<std::string>{};
}

WindowUnit unit_from(const std::string& text) {
    if (text == "day" || text == "days") return WindowUnit::days;
    if (text == "week" || text == "weeks" || text == "iso_week") return WindowUnit::weeks;
    if (text == "year" || text == "years") return WindowUnit::years;
    return WindowUnit::months;
}

std::optional<Instant> time_of(const json& object, const char* member, const Zone& zone) {
    if (!object.contains(member) || !object.at(member).is_string()) return std::nullopt;
    const auto at = parse_instant_or_day(object.at(member).get<std::string>(), zone);
    return at ? std::optional(*at) : std::nullopt;
}

WindowRule window_from(const json& body, const Zone& zone) {
    WindowRule rule;
    if (!body.contains("window")) return rule;
    const auto& window = body.at("window");
    const auto kind = place_in(window_kinds, window.value("kind", "term"));
    if (!kind) throw std::invalid_argument("window.kind");
    rule.kind = static_cast<WindowKind>(*kind);
    rule.unit = unit_from(window.value("unit", "month"));
    rule.n = window.value(rule.kind == WindowKind::mean ? "years" : "n", 1);
    rule.from = time_of(window, "from", zone);
    rule.to = time_of(window, "to", zone);
    rule.name = window.value("name", "");
    return rule;
}

void read_share(const json& body, Quantity& quantity) {
    if (!body.contains("share_of_total")) return;
    quantity.share_of_total = body.at("share_of_total").get<double>();
    if (!body.contains("of")) {
        quantity.of_floor = 0;
        return;
    }
    const auto& of = body.at("of");
    if (of.is_number())
        quantity.of_value = of.get<double>();
    else
        quantity.of_floor = of.value("floor", 0.0);
}

void read_reserve(const json& body, const Zone& zone, Quantity& quantity) {
    if (!body.contains("reserve")) return;
    const auto& reserve = body.at("reserve");
    quantity.reserve = Reserve{reserve.value("value", 0.0), std::nullopt};
    if (!reserve.contains("unlocked_by") || !reserve.at("unlocked_by").is_object()) return;
    quantity.reserve->unlocked_on = time_of(reserve.at("unlocked_by"), "on", zone);
}

}  // namespace

std::string measure_text(LimitMeasure measure) {
    return measures.at(static_cast<std::size_t>(measure));
}
std::string each_of_text(EachOf each_of) {
    return eaches.at(static_cast<std::size_t>(each_of));
}

std::optional<Measure> measure_of(const Quantity& quantity) {
    switch (quantity.measure) {
        case LimitMeasure::in_situ_m3:
            return Measure::in_situ_m3;
        case LimitMeasure::hopper_m3:
            return Measure::hopper_m3;
        case LimitMeasure::wet_t:
            return Measure::wet_t;
        case LimitMeasure::dry_t:
            return Measure::dry_t;
        default:
            return std::nullopt;
    }
}

Scope scope_from(const nlohmann::json& body) {
    Scope scope;
    if (!body.contains("applies")) return scope;
    const auto& applies = body.at("applies");
    if (applies.value("activity", "both") == "dredge") scope.activity = Activity::dredge;
    scope.claims = names(applies, "claims");
    scope.grounds = names(applies, "grounds");
    scope.cells = names(applies, "cells");
    scope.materials = names(applies, "materials");
    scope.classes = names(applies, "classes");
    scope.plant = names(applies, "plant");
    return scope;
}

Checked<Quantity> quantity_from(const Condition& condition, const Zone& zone) {
    try {
        const auto body = condition.body.empty() ? json::object() : json::parse(condition.body);
        Quantity quantity;
        quantity.scope = scope_from(body);
        const auto measure = place_in(measures, body.value("measure", "in_situ_m3"));
        const auto each = place_in(eaches, body.value("each_of", "none"));
        if (!measure || !each) throw std::invalid_argument(measure ? "each_of" : "measure");
        quantity.measure = static_cast<LimitMeasure>(*measure);
        quantity.each_of = static_cast<EachOf>(*each);
        quantity.method = body.value("method", "");
        quantity.at_most = body.value("op", "at_most") != "at_least";
        if (body.contains("value")) quantity.value = body.at("value").get<double>();
        read_share(body, quantity);
        quantity.window = window_from(body, zone);
        read_reserve(body, zone, quantity);
        if (body.contains("warn_at")) quantity.warn_at = body.at("warn_at").get<std::vector<double>>();
        return quantity;
    } catch (const json::exception&) {
        return Refusal{"condition-does-not-read", "condition " + condition.condition,
                       "its members do not read", "see docs/conditions.md"};
    } catch (const std::exception& error) {
        return Refusal{"condition-does-not-read", "condition " + condition.condition,
                       std::string("its member does not read: ") + error.what(), "see docs/conditions.md"};
    }
}

std::optional<double> limit_at(const Quantity& quantity, Instant t) {
    if (quantity.share_of_total) return quantity.share_of_total;
    if (!quantity.value) return std::nullopt;
    const auto& reserve = quantity.reserve;
    const bool locked = reserve && !(reserve->unlocked_on && *reserve->unlocked_on <= t);
    return *quantity.value - (locked ? reserve->value : 0);
}

}  // namespace spoilbook
