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

/// UTC or GMT as a line has it, with the offset behind it; blank where it says neither.
std::string zone_said_by(const std::string& line) {
    const auto small = lower(line);
    const std::size_t at = std::min(small.find("utc"), small.find("gmt"));
    if (at == std::string::npos) return "";
    std::size_t end = at + 3;
    while (end < line.size() && (std::string("+-:").find(line[end]) != std::string::npos ||
                                 std::isdigit(static_cast<unsigned char>(line[end])) != 0))
        ++end;
    const auto words = line.substr(at, end - at);
    if (!fixed_offset_s(words)) return "";
    return words.size() == 3 ? "UTC" : words;
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
        const auto utc = std::find_if(dates.begin(), dates.end(),
                                      [&](std::size_t k) { return !zone_said_by(column(k).name).empty(); });
        if (utc != dates.end()) std::rotate(dates.begin(), utc, utc + 1);
        layout().time_column = dates.front();
        const bool with_clock =
            std::any_of(table().first_rows.begin(), table().first_rows.end(), [&](const auto& row) {
                const auto time = dates.front() < row.size() ? logger_time(row[dates.front()]) : std::nullopt;
                return table().counted || (time && time->has_clock);
            });
        if (!with_clock && !clocks.empty()) layout().clock_column = clocks.front();
        if (!with_clock && clocks.empty()) assume("rows have no time of day: each is taken at midnight");
        assume("times stand in " + shown_column(layout().time_column) +
               (layout().clock_column ? " and " + shown_column(*layout().clock_column) : ""));
        for (std::size_t i = 1; i < dates.size(); ++i)
            assume(shown_column(dates[i]) + " holds times too and is not read");
        for (std::size_t k = 0; k < table().columns.size(); ++k) {
            const auto& said = column(k).values;
            if (!said.empty() &&
                std::all_of(said.begin(), said.end(), [](const auto& one) { return is_half_day(one.first); }))
                ask("table",
                    shown_column(k) + " holds AM and PM apart from the time: put them behind it in a copy");
        }
    }

    /// Of times that are one number: a name that says how they count, or a person.
    void find_count(DateOrder likely) {
        const auto& name = column(layout().time_column).name;
        const bool named = likely == DateOrder::excel ? says_any(name, {"excel", "serial"})
                                                      : says_any(name, {"epoch", "unix", "posix", "1970"});
        layout().dates = likely;
        const auto told =
            fmt::format("times are {}", likely == DateOrder::excel    ? "days as a spreadsheet counts them"
                                        : likely == DateOrder::unix_s ? "seconds since 1970 in UTC"
                                                                      : "milliseconds since 1970 in UTC");
        if (answers_.dates == likely || named) return assume(told);
        if (!answers_.dates && before_ && before_->dates == likely)
            return assume(told + ", as in this site's last file");
        ask("dates",
            fmt::format("\"{}\": are these times, and {}?", table().first_rows.front()[layout().time_column],
                        told.substr(10)),
            {date_order_text(likely)});
    }

    void find_dates() {
        const auto& of = column(layout().time_column);
        if (table().counted) return find_count(*table().counted);
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
        if (answers_.dates && !is_counted(*answers_.dates)) {
            layout().dates = *answers_.dates;
        } else if (before_ && before_->dates != DateOrder::ymd && !is_counted(before_->dates)) {
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
        for (std::size_t k = 0; k < table().columns.size() && !answers_.rows.empty(); ++k) {
            if (!is_time(k) && !column(k).many && column(k).values.contains(answers_.rows))
                return choose_rows(k);
        }
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
            const bool named = says_any(column(k).name, {"turb", "ntu", "fnu", "trüb", "trueb"});
            if (!named && 2 * column(k).any_numbers() < table().rows - column(k).blank) continue;
            numbers.push_back(k);
            if (named) turbid.push_back(k);
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
        for (std::size_t other = 0; other < table().columns.size(); ++other) {
            if (other != k && says_any(column(other).name, {"flag", "qc", "qual", "f_turb", "remark"}))
                assume(shown_column(other) + " is not read: the book makes flags of its own");
        }
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
        if (is_counted(layout().dates) && layout().dates != DateOrder::excel) {
            layout().zone = "UTC";
            return;
        }
        if (find_zone_column()) return;
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

    /// A column that names the zone of each row. True where it settles or opens the question.
    bool find_zone_column() {
        static constexpr std::array heads{"tz", "tz_cd", "zone", "time zone", "timezone", "utc offset"};
        for (std::size_t k = 0; k < table().columns.size(); ++k) {
            const auto& said = column(k).values;
            const auto names = lower(column(k).name);
            const bool named = std::any_of(heads.begin(), heads.end(), [&](const char* head) {
                return names == head || names.starts_with(std::string(head) + " ");
            });
            if (!named || said.empty() || is_time(k)) continue;
            const auto& first = said.begin()->first;
            if (said.size() == 1 && answers_.zone.empty() && fixed_offset_s(first)) {
                layout().zone = first;
                assume(fmt::format("times are in {}, as {} says", first, shown_column(k)));
                return true;
            }
            assume(fmt::format("{} says \"{}\"{} and is not read", shown_column(k), first,
                               said.size() > 1 ? " and others" : ""));
            if (said.size() == 1 || (!answers_.zone.empty() && !fixed_offset_s(answers_.zone))) continue;
            ask("zone", shown_column(k) + " says several zones: no fixed offset can be right for all rows",
                {"Pacific/Auckland", "America/New_York"});
            return true;
        }
        return false;
    }

    /// UTC or GMT with or without an offset, in the header of the times or in a line that speaks of a zone.
    std::string stated_zone() const {
        std::vector<std::string> lines{column(guess_.layout.time_column).name};
        if (guess_.layout.clock_column) lines.push_back(column(*guess_.layout.clock_column).name);
        lines.insert(lines.end(), table().zone_lines.begin(), table().zone_lines.end());
        for (const auto& line : lines) {
            if (auto zone = zone_said_by(line); !zone.empty()) return zone;
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

Checked<LoggerGuess> guess_layout(const ByteSource& bytes, const std::string& file, const std::string& site,
                                  const LoggerAnswers& answers, const std::optional<LoggerLayout>& before) {
    auto table = logger_table(bytes);
    if (table.first_row == 0)
        return Refusal{"no-table", file, "no line has a date and something beside it",
                       "export the logger's readings as text with one reading a line"};
    return Guesser(std::move(table), site, answers, before).run();
}

}  // namespace spoilbook
