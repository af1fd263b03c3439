// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <array>
#include <cctype>

#include "model/turbidity/logger_guesser.h"
#include "model/turbidity/logger_zone.h"

namespace spoilbook {

std::string zone_said_by(const std::string& line) {
    const auto small = lower_case(line);
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

void LoggerGuesser::find_zone() {
    if (is_counted(layout().dates) && layout().dates != DateOrder::excel) {
        layout().zone = "UTC";
        return;
    }
    if (find_zone_column()) return;
    const auto& of = column(layout().time_column);
    const auto* clock = layout().clock_column ? &column(*layout().clock_column) : &of;
    if (of.offsets + (clock == &of ? 0 : clock->offsets) >= of.dates && of.dates > 0)
        return assume("each time says its own offset");
    if (clock->zone_words.size() > 1 && (answers_.zone.empty() || fixed_offset_s(answers_.zone)))
        return ask("zone", "times say several zones: no fixed offset can be right for all rows",
                   {"Pacific/Auckland", "America/New_York"});
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
    ask_zone();
}

void LoggerGuesser::ask_zone() {
    std::string text = "in which zone did the logger keep its clock?";
    const auto& words = column(layout().clock_column.value_or(layout().time_column)).zone_words;
    if (!words.empty())
        text += fmt::format(" Its times say {}", words.begin()->first);
    else if (!table().zone_lines.empty())
        text += " The file says: " + table().zone_lines.back();
    ask("zone", text, {"UTC", "+12:00", "Pacific/Auckland"});
}

/// A column that names the zone of each row. True where it settles or opens the question.
bool LoggerGuesser::find_zone_column() {
    static constexpr std::array heads{"tz", "tz_cd", "zone", "time zone", "timezone", "utc offset"};
    for (std::size_t k = 0; k < table().columns.size(); ++k) {
        const auto& said = column(k).values;
        const auto names = lower_case(column(k).name);
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
std::string LoggerGuesser::stated_zone() const {
    std::vector<std::string> lines{column(guess_.layout.time_column).name};
    if (guess_.layout.clock_column) lines.push_back(column(*guess_.layout.clock_column).name);
    lines.insert(lines.end(), table().zone_lines.begin(), table().zone_lines.end());
    for (const auto& line : lines) {
        if (auto zone = zone_said_by(line); !zone.empty()) return zone;
    }
    return "";
}

}  // namespace spoilbook
