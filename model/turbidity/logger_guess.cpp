// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_guess.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>

#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_zone.h"
#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

bool says_any(const std::string& text, std::initializer_list<const char*> words) {
    const auto small = lower(text);
    return std::any_of(words.begin(), words.end(),
                       [&](const char* word) { return small.find(word) != std::string::npos; });
}

class Guesser {
 public:
    Guesser(LoggerTable table, const std::string& site, const LoggerAnswers& answers,
            const std::optional<LoggerLayout>& before)
        : site_(site), answers_(answers), before_(before) {
        guess_.table = std::move(table);
    }

    LoggerGuess run() {
        layout().delimiter = table().delimiter;
        layout().first_row = table().first_row;
        assume(fmt::format("fields are parted by {}, the first row is line {}", shown(table().delimiter),
                           table().first_row));
        find_times();
        find_dates();
        find_rows();
        if (find_value()) {
            find_decimal();
            find_missing();
        }
        find_zone();
        return std::move(guess_);
    }

 private:
    LoggerLayout& layout() { return guess_.layout; }
    const LoggerTable& table() const { return guess_.table; }
    const LoggerColumn& column(std::size_t k) const { return table().columns[k]; }
    void assume(std::string text) { guess_.assumed.push_back(std::move(text)); }
    void ask(std::string about, std::string text, std::vector<std::string> choices = {}) {
        guess_.questions.push_back({std::move(about), std::move(text), std::move(choices)});
    }
    static std::string shown(char mark) {
        return mark == '\t' ? "tabs" : mark == ' ' ? "blanks" : fmt::format("\"{}\"", mark);
    }
    std::string shown_column(std::size_t k) const {
        return column(k).name.empty() ? fmt::format("column {}", k + 1)
                                      : fmt::format("column {} \"{}\"", k + 1, column(k).name);
    }
    /// Most of what stands in the column.
    bool most(std::size_t n, const LoggerColumn& of) const {
        return 10 * n >= 9 * (table().rows - of.blank) && n > 0;
    }

    void find_times() {
        std::vector<std::size_t> dates, clocks;
        for (std::size_t k = 0; k < table().columns.size(); ++k) {
            if (most(column(k).dates, column(k))) dates.push_back(k);
            if (most(column(k).clocks, column(k))) clocks.push_back(k);
        }
        if (dates.empty()) return ask("table", "no column holds dates in most of its rows");
        layout().time_column = dates.front();
        const bool with_clock =
            std::any_of(table().first_rows.begin(), table().first_rows.end(), [&](const auto& row) {
                const auto time = dates.front() < row.size() ? logger_time(row[dates.front()]) : std::nullopt;
                return time && time->has_clock;
            });
        if (!with_clock && !clocks.empty()) layout().clock_column = clocks.front();
        assume("times stand in " + shown_column(layout().time_column) +
               (layout().clock_column ? " and " + shown_column(*layout().clock_column) : ""));
        for (std::size_t i = 1; i < dates.size(); ++i)
            assume(shown_column(dates[i]) + " holds times too and is not read");
    }

    void find_dates() {
        const auto& of = column(layout().time_column);
        if (of.dates == of.sure_dates) {
            layout().dates = DateOrder::ymd;
            return;
        }
        if (of.first_over_12 > 0 && of.second_over_12 > 0)
            return ask("dates",
                       "some dates have a first, some a second number over 12: they fit no one order");
        if (of.first_over_12 > 0 || of.second_over_12 > 0) {
            layout().dates = of.first_over_12 > 0 ? DateOrder::dmy : DateOrder::mdy;
            return assume(
                fmt::format("dates are {} (a number over 12 proves it)", date_order_text(layout().dates)));
        }
        if (answers_.dates) {
            layout().dates = *answers_.dates;
        } else if (before_ && before_->dates != DateOrder::ymd) {
            layout().dates = before_->dates;
            assume(fmt::format("dates are {}, as in this site's last file", date_order_text(before_->dates)));
        } else {
            ask("dates",
                fmt::format("\"{}\": is the day first or the month? No date proves it",
                            table().first_rows.front()[layout().time_column]),
                {"dmy", "mdy"});
        }
    }

    bool is_time(std::size_t k) const {
        return k == guess_.layout.time_column || k == guess_.layout.clock_column ||
               column(k).dates > table().rows / 2;
    }

    /// Of several sites in one file: the column that names them.
    void find_rows() {
        for (std::size_t k = 0; k < table().columns.size(); ++k) {
            const auto& of = column(k);
            const bool named = says_any(of.last, {"site", "station", "location", "stelle", "mooring"});
            if (is_time(k) || of.many || !named || of.blank > table().rows / 2) continue;
            if (of.values.size() == 1) {
                assume(fmt::format("all rows are of \"{}\" ({}), and are taken for site {}",
                                   of.values.begin()->first, shown_column(k), site_));
                named_ = k;
                return;
            }
            return choose_rows(k);
        }
    }

    void choose_rows(std::size_t k) {
        named_ = k;
        layout().rows_column = k;
        std::vector<std::string> choices;
        for (const auto& [value, n] : column(k).values) {
            choices.push_back(value);
            if (!answers_.rows.empty() ? value == answers_.rows : lower(value) == lower(site_))
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

    /// False where it must be asked first.
    bool find_value() {
        std::vector<std::size_t> numbers, turbid;
        for (std::size_t k = 0; k < table().columns.size(); ++k) {
            if (is_time(k) || k == named_ || column(k).any_numbers() == 0) continue;
            if (2 * column(k).any_numbers() < table().rows - column(k).blank) continue;
            numbers.push_back(k);
            if (says_any(column(k).name, {"turb", "ntu", "fnu", "trüb", "trueb"})) turbid.push_back(k);
        }
        if (!answers_.column.empty()) return take_answer();
        std::vector<std::string> choices;
        for (const std::size_t k : turbid.empty() ? numbers : turbid)
            choices.push_back(column(k).name.empty() ? std::to_string(k + 1) : column(k).name);
        if (before_) {
            const auto again = std::find_if(numbers.begin(), numbers.end(), [&](std::size_t k) {
                return !before_->value_name.empty() && column(k).name == before_->value_name;
            });
            if (again != numbers.end()) return take_value(*again, ", as in this site's last file");
        }
        if (turbid.size() == 1) return take_value(turbid.front(), "");
        if (turbid.empty() && numbers.size() == 1)
            return take_value(numbers.front(), ", the only one with numbers");
        ask("column", "which column holds the turbidity?", choices);
        return false;
    }

    bool take_value(std::size_t k, const std::string& why) {
        layout().value_column = k;
        layout().value_name = column(k).name;
        assume("values stand in " + shown_column(k) + why);
        return true;
    }

    bool take_answer() {
        const auto number = parse_integer(answers_.column);
        for (std::size_t k = 0; k < table().columns.size(); ++k) {
            const bool this_one = number ? static_cast<std::size_t>(*number) == k + 1
                                         : lower(column(k).name) == lower(answers_.column) ||
                                               lower(column(k).last) == lower(answers_.column);
            if (this_one) return take_value(k, "");
        }
        ask("column", fmt::format("there is no column \"{}\"", answers_.column));
        return false;
    }

    void find_decimal() {
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

    void find_missing() {
        const auto& of = column(layout().value_column);
        const bool told = !answers_.missing.empty();
        static constexpr std::array blanks{"na",   "nan", "n/a", "#n/a", "null",    "none", "nd",
                                           "n.d.", "-",   "--",  "---",  "missing", "err",  "error"};
        std::string open;
        std::size_t asked = 0;
        for (const auto& [text, n] : of.texts) {
            const bool says =
                std::find(answers_.missing.begin(), answers_.missing.end(), text) != answers_.missing.end();
            const bool before = before_ && std::find(before_->missing.begin(), before_->missing.end(),
                                                     text) != before_->missing.end();
            const bool usual = std::find(blanks.begin(), blanks.end(), lower(text)) != blanks.end() ||
                               (text.front() == '-' && is_missing_code(text));
            if (says || before || (!told && usual)) {
                layout().missing.push_back(text);
                assume(fmt::format("\"{}\" stands for a missing value ({} times)", shown_text(text), n));
            } else if (!told && (!is_missing_code(text) || n > 1) && ++asked <= 5) {
                open += (open.empty() ? "\"" : ", \"") + shown_text(text) + "\"";
            }
        }
        if (!open.empty())
            ask("missing", "do these stand for a missing value: " + open + "?", {open, "none"});
    }

    void find_zone() {
        const auto& of = column(layout().time_column);
        const auto* clock = layout().clock_column ? &column(*layout().clock_column) : &of;
        if (of.offsets + (clock == &of ? 0 : clock->offsets) >= of.dates && of.dates > 0)
            return assume("each time says its own offset");
        if (!answers_.zone.empty()) {
            layout().zone = answers_.zone;
            if (!LoggerZone(answers_.zone).known())
                ask("zone",
                    fmt::format("\"{}\" is no zone: write UTC, +12:00 or Pacific/Auckland", answers_.zone));
            return;
        }
        if (const auto stated = stated_zone(); !stated.empty()) {
            layout().zone = stated;
            return assume(fmt::format("times are in {}, as the file says", stated));
        }
        if (before_ && !before_->zone.empty()) {
            layout().zone = before_->zone;
            return assume(fmt::format("times are in {}, as in this site's last file", before_->zone));
        }
        std::string text = "in which zone did the logger keep its clock?";
        if (!table().zone_lines.empty()) text += " The file says: " + table().zone_lines.back();
        ask("zone", text, {"UTC", "+12:00", "Pacific/Auckland"});
    }

    /// UTC or GMT with or without an offset, in the header of the times or in a line that speaks of a zone.
    std::string stated_zone() const {
        auto lines = table().zone_lines;
        lines.push_back(column(guess_.layout.time_column).name);
        for (const auto& line : lines) {
            const auto small = lower(line);
            std::size_t at = std::min(small.find("utc"), small.find("gmt"));
            if (at == std::string::npos) continue;
            std::size_t end = at + 3;
            while (end < line.size() && (std::string("+-:").find(line[end]) != std::string::npos ||
                                         std::isdigit(static_cast<unsigned char>(line[end])) != 0))
                ++end;
            const auto words = line.substr(at, end - at);
            if (fixed_offset_s(words)) return words.size() == 3 ? "UTC" : words;
        }
        return "";
    }

    const std::string& site_;
    const LoggerAnswers& answers_;
    const std::optional<LoggerLayout>& before_;
    std::optional<std::size_t> named_;
    LoggerGuess guess_;
};

}  // namespace

Checked<LoggerGuess> guess_layout(std::string_view bytes, const std::string& file, const std::string& site,
                                  const LoggerAnswers& answers, const std::optional<LoggerLayout>& before) {
    auto table = logger_table(logger_text(bytes));
    if (table.first_row == 0)
        return Refusal{"no-table", file, "no line has a date and something beside it",
                       "export the logger's readings as text with one reading a line"};
    return Guesser(std::move(table), site, answers, before).run();
}

}  // namespace spoilbook
