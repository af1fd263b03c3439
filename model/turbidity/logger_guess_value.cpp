// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <array>
#include <cctype>

#include "model/turbidity/logger_guesser.h"
#include "model/turbidity/logger_lines.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

bool is_turbid(const LoggerColumn& column) {
    return says_any(column.name, {"turb", "ntu", "fnu", "trüb", "trueb"});
}

/// Whether a site's name stands in the text as a word of its own, in any case.
bool names_site(const std::string& text, const std::string& site) {
    const auto words = " " + lower_case(text) + " ";
    const auto name = lower_case(site);
    const auto within = [&](std::size_t i) {
        return std::isalnum(static_cast<unsigned char>(words[i])) != 0;
    };
    for (std::size_t at = words.find(name); at != std::string::npos && !name.empty();
         at = words.find(name, at + 1)) {
        if (at > 0 && !within(at - 1) && !within(at + name.size())) return true;
    }
    return false;
}

}  // namespace

/// Columns that may hold values: with numbers in most rows or, of turbidity by their name, in some.
std::vector<std::size_t> LoggerGuesser::value_columns(bool turbid) const {
    std::vector<std::size_t> found;
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const bool aside = is_time(k) || k == named_ || k == guess_.layout.quantity_column;
        if (aside || column(k).any_numbers() == 0) continue;
        const bool named = is_turbid(column(k));
        if (!named && (turbid || 2 * column(k).any_numbers() < table().rows - column(k).blank)) continue;
        found.push_back(k);
    }
    return found;
}

/// Of a file with a column a site, the only one that is named as this one.
std::optional<std::size_t> LoggerGuesser::column_of_site(const std::vector<std::size_t>& among) const {
    std::optional<std::size_t> found;
    for (const std::size_t k : among) {
        if (!names_site(column(k).name, site_)) continue;
        if (found) return std::nullopt;
        found = k;
    }
    return found;
}

/// Where rows have a field more than there are heads, a name may stand over its neighbour: of row numbers
/// without a head, or of a decimal comma in a file parted by commas.
bool LoggerGuesser::heads_are_short() {
    const std::size_t heads = table().heads, fields = table().columns.size();
    return heads > 0 && heads < fields && 2 * column(fields - 1).blank < table().rows;
}

/// False where it must be asked first.
bool LoggerGuesser::find_value() {
    if (!answers_.column.empty()) return take_answer();
    const auto numbers = value_columns(false), turbid = value_columns(true);
    if (before_) {
        const auto again = std::find_if(numbers.begin(), numbers.end(), [&](std::size_t k) {
            return !before_->value_name.empty() && column(k).name == before_->value_name &&
                   (!heads_are_short() || before_->value_column == k);
        });
        if (again != numbers.end()) return take_value(*again, ", as in this site's last file");
    }
    if (heads_are_short()) {
        std::vector<std::string> choices;
        for (const std::size_t k : numbers)
            choices.push_back(std::to_string(k + 1));
        ask("column",
            fmt::format(
                "rows have {} fields, but only {} are named, so that a name may stand over the wrong one "
                "(a decimal comma in a file parted by commas does that, and must be mended in a copy): "
                "what is the number of the column of turbidity?",
                table().columns.size(), table().heads),
            choices);
        return false;
    }
    const auto& likely = turbid.empty() ? numbers : turbid;
    if (turbid.size() == 1) return take_value(turbid.front(), "");
    if (const auto of_site = column_of_site(likely))
        return take_value(*of_site, ", the only one that is named as the site");
    if (turbid.empty() && numbers.size() == 1)
        return take_value(numbers.front(), ", the only one with numbers");
    std::vector<std::string> choices;
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const bool chosen = std::find(likely.begin(), likely.end(), k) != likely.end();
        if (chosen || (likely.empty() && !is_time(k)))
            choices.push_back(column(k).name.empty() ? std::to_string(k + 1) : column(k).name);
    }
    ask("column", "which column holds the turbidity?", choices);
    return false;
}

bool LoggerGuesser::take_value(std::size_t k, const std::string& why) {
    layout().value_column = k;
    layout().value_name = column(k).name;
    assume("values stand in " + shown_column(k) + why);
    for (std::size_t other = 0; other < table().columns.size(); ++other) {
        if (other != k && says_any(column(other).name, {"flag", "qc", "qual", "f_turb", "remark"}))
            assume(shown_column(other) + " is not read: the book makes flags of its own");
    }
    return true;
}

bool LoggerGuesser::take_answer() {
    const auto number = parse_integer(answers_.column);
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const bool this_one = number ? static_cast<std::size_t>(*number) == k + 1
                                     : lower_case(column(k).name) == lower_case(answers_.column) ||
                                           lower_case(column(k).last) == lower_case(answers_.column);
        if (this_one) return take_value(k, "");
    }
    ask("column", fmt::format("there is no column \"{}\"", answers_.column));
    return false;
}

void LoggerGuesser::find_decimal() {
    const auto& of = column(layout().value_column);
    if (answers_.decimal) {
        layout().decimal = *answers_.decimal;
    } else if (of.comma_marks > 0 && of.point_marks > 0) {
        ask("decimal", "some values have a point, some a comma: which is the decimal mark?", {".", ","});
    } else if (of.comma_marks > 0 && of.not_thousands > 0) {
        layout().decimal = ',';
        assume("the decimal mark is a comma");
    } else if (of.comma_marks > 0 && before_ && before_->decimal == ',') {
        layout().decimal = ',';
        assume("the decimal mark is a comma, as in this site's last file");
    } else if (of.comma_marks > 0) {
        ask("decimal", "does the comma part thousands, or is it the decimal mark?", {",", "."});
    }
}

void LoggerGuesser::find_missing() {
    const auto& of = column(layout().value_column);
    const bool told = !answers_.missing.empty();
    static constexpr std::array blanks{"na",   "nan", "n/a", "#n/a", "null",    "none", "nd",
                                       "n.d.", "-",   "--",  "---",  "missing", "err",  "error"};
    std::string open;
    std::size_t asked = 0;
    for (const auto& [text, n] : of.texts) {
        const bool says =
            std::find(answers_.missing.begin(), answers_.missing.end(), text) != answers_.missing.end();
        const bool before = before_ && std::find(before_->missing.begin(), before_->missing.end(), text) !=
                                           before_->missing.end();
        const bool usual = std::find(blanks.begin(), blanks.end(), lower_case(text)) != blanks.end() ||
                           (text.front() == '-' && is_missing_code(text));
        if (says || before || (!told && usual)) {
            layout().missing.push_back(text);
            assume(fmt::format("\"{}\" stands for a missing value ({} times)", shown_text(text), n));
        } else if (!told && (!is_missing_code(text) || n > 1) && ++asked <= 5) {
            open += (open.empty() ? "\"" : ", \"") + shown_text(text) + "\"";
        }
    }
    if (!open.empty()) ask("missing", "do these stand for a missing value: " + open + "?", {open, "none"});
}

}  // namespace spoilbook
