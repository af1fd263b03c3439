// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/turbidity/logger_guesser.h"

namespace spoilbook {

/// Of several quantities in one file, a row each: the rows of turbidity, where one alone says so.
void LoggerGuesser::find_quantity() {
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const auto& of = column(k);
        const bool named = says_any(of.last, {"parameter", "variable", "analyte", "determinand", "quantity",
                                              "characteristic", "constituent", "measurand", "property"});
        if (is_time(k) || of.many || !named || of.values.size() < 2 || of.blank > table().rows / 2) continue;
        std::vector<std::string> all, turbid;
        for (const auto& [value, n] : of.values) {
            all.push_back(value);
            if (says_any(value, {"turb", "ntu", "fnu", "trüb", "trueb"})) turbid.push_back(value);
        }
        const auto told = std::find(all.begin(), all.end(), answers_.rows);
        const bool again = before_ && before_->quantity_column == k &&
                           std::find(all.begin(), all.end(), before_->quantity_value) != all.end();
        layout().quantity_column = k;
        if (told != all.end())
            layout().quantity_value = *told;
        else if (turbid.size() == 1)
            layout().quantity_value = turbid.front();
        else if (again)
            layout().quantity_value = before_->quantity_value;
        else
            return ask("rows",
                       fmt::format("{} names several quantities: which rows are turbidity?", shown_column(k)),
                       turbid.empty() ? all : turbid);
        return assume(fmt::format("the rows of turbidity are those where {} says \"{}\"", shown_column(k),
                                  layout().quantity_value));
    }
}

/// Of several sites in one file: the column that names them.
void LoggerGuesser::find_rows() {
    for (std::size_t k = 0; k < table().columns.size() && !answers_.rows.empty(); ++k) {
        if (!is_time(k) && k != layout().quantity_column && !column(k).many &&
            column(k).values.contains(answers_.rows))
            return choose_rows(k);
    }
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const auto& of = column(k);
        const bool named = says_any(of.last, {"site", "station", "location", "stelle", "mooring"});
        if (is_time(k) || k == layout().quantity_column || of.many || !named || of.blank > table().rows / 2)
            continue;
        if (of.values.size() == 1) {
            assume(fmt::format("all rows are of \"{}\" ({}), and are taken for site {}",
                               of.values.begin()->first, shown_column(k), site_));
            named_ = k;
            return;
        }
        return choose_rows(k);
    }
}

void LoggerGuesser::choose_rows(std::size_t k) {
    named_ = k;
    layout().rows_column = k;
    std::vector<std::string> choices;
    for (const auto& [value, n] : column(k).values) {
        choices.push_back(value);
        if (!answers_.rows.empty() ? value == answers_.rows : lower_case(value) == lower_case(site_))
            layout().rows_value = value;
    }
    const bool same = before_ && before_->rows_column &&
                      std::find(choices.begin(), choices.end(), before_->rows_value) != choices.end();
    if (layout().rows_value.empty() && answers_.rows.empty() && same)
        layout().rows_value = before_->rows_value;
    if (layout().rows_value.empty())
        return ask("rows",
                   fmt::format("{} names several sites: which rows are of {}?", shown_column(k), site_),
                   choices);
    assume(fmt::format("the rows of site {} are those where {} says \"{}\"", site_, shown_column(k),
                       layout().rows_value));
}

}  // namespace spoilbook
