// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_layout.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

namespace spoilbook {

namespace {

using nlohmann::json;

constexpr std::array orders{"ymd", "dmy", "mdy", "unix", "unix_ms", "excel", "doy"};

std::optional<std::size_t> column_in(const json& body, const char* name) {
    if (!body.contains(name)) return std::nullopt;
    return body.at(name).get<std::size_t>() - 1;
}

/// Each part of a time under the name of its column.
template <class Parts, class Use>
void each_part(Parts& parts, const Use& use) {
    use("year_column", parts.year);
    use("month_column", parts.month);
    use("day_column", parts.day);
    use("day_of_year_column", parts.day_of_year);
    use("hour_column", parts.hour);
    use("minute_column", parts.minute);
    use("second_column", parts.second);
    use("half_column", parts.half);
}

}  // namespace

std::vector<std::size_t> LoggerLayout::time_columns() const {
    std::vector<std::size_t> columns{time_column};
    for (const auto& part : {parts.day_of_year, parts.month, parts.day, clock_column, parts.hour,
                             parts.minute, parts.second, parts.half}) {
        if (part) columns.push_back(*part);
    }
    return columns;
}

std::string date_order_text(DateOrder order) {
    return orders.at(static_cast<std::size_t>(order));
}

std::optional<DateOrder> date_order_named(const std::string& text) {
    const auto found = std::find(orders.begin(), orders.end(), text);
    if (found == orders.end()) return std::nullopt;
    return static_cast<DateOrder>(found - orders.begin());
}

std::string layout_text(const LoggerLayout& layout) {
    json body{{"delimiter", std::string(1, layout.delimiter)},
              {"first_row", layout.first_row},
              {"time_column", layout.time_column + 1},
              {"value_column", layout.value_column + 1},
              {"value_name", layout.value_name},
              {"dates", date_order_text(layout.dates)},
              {"zone", layout.zone},
              {"decimal", std::string(1, layout.decimal)},
              {"missing", layout.missing}};
    if (layout.clock_column) body["clock_column"] = *layout.clock_column + 1;
    each_part(layout.parts, [&](const char* name, const auto& column) {
        if (column) body[name] = *column + 1;
    });
    if (layout.rows_column) {
        body["rows_column"] = *layout.rows_column + 1;
        body["rows_value"] = layout.rows_value;
    }
    if (layout.quantity_column) {
        body["quantity_column"] = *layout.quantity_column + 1;
        body["quantity_value"] = layout.quantity_value;
    }
    return body.dump();
}

std::optional<LoggerLayout> layout_from(const std::string& text) {
    try {
        const auto body = json::parse(text);
        LoggerLayout layout;
        layout.delimiter = body.at("delimiter").get<std::string>().at(0);
        layout.first_row = body.at("first_row").get<std::size_t>();
        layout.time_column = *column_in(body, "time_column");
        layout.clock_column = column_in(body, "clock_column");
        each_part(layout.parts, [&](const char* name, auto& column) { column = column_in(body, name); });
        layout.value_column = *column_in(body, "value_column");
        layout.value_name = body.value("value_name", "");
        layout.dates = date_order_named(body.at("dates").get<std::string>()).value();
        layout.zone = body.value("zone", "");
        layout.decimal = body.at("decimal").get<std::string>().at(0);
        layout.missing = body.value("missing", std::vector<std::string>{});
        layout.rows_column = column_in(body, "rows_column");
        layout.rows_value = body.value("rows_value", "");
        layout.quantity_column = column_in(body, "quantity_column");
        layout.quantity_value = body.value("quantity_value", "");
        return layout;
    } catch (const std::exception&) {
        return std::nullopt;
    }
}

}  // namespace spoilbook
