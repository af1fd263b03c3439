// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <array>
#include <map>

#include "model/consent/sentence_parts.h"

namespace spoilbook::sentence {

namespace {

/// "1 September" of 09-01; what is none stays as it is.
std::string month_day_words(const std::string& text) {
    constexpr std::array months{"January", "February", "March",     "April",   "May",      "June",
                                "July",    "August",   "September", "October", "November", "December"};
    if (text.size() != 5 || text[2] != '-') return text;
    const auto month = static_cast<std::size_t>(text[0] - '0') * 10 + static_cast<std::size_t>(text[1] - '0');
    const int day = (text[3] - '0') * 10 + (text[4] - '0');
    if (month < 1 || month > months.size()) return text;
    return fmt::format("{} {}", day, months.at(month - 1));
}

std::string between(const std::string& span, const char* format, std::string (*shown)(const std::string&)) {
    const auto dots = span.find("..");
    if (dots == std::string::npos) return "on " + shown(span);
    return fmt::format(fmt::runtime(format), shown(span.substr(0, dots)), shown(span.substr(dots + 2)));
}

std::string as_it_is(const std::string& text) {
    return text;
}

std::string weekday(const std::string& name) {
    static const std::map<std::string, std::string> days{
        {"mon", "Monday"}, {"tue", "Tuesday"},  {"wed", "Wednesday"}, {"thu", "Thursday"},
        {"fri", "Friday"}, {"sat", "Saturday"}, {"sun", "Sunday"}};
    const auto found = days.find(name);
    return found == days.end() ? name : found->second;
}

std::string tide_words(const Members& tide) {
    if (tide.has("min") && tide.has("max"))
        return fmt::format("while the tide is {} m to {} m", tide.number_or_blank("min"),
                           tide.number_or_blank("max"));
    if (tide.has("min")) return fmt::format("while the tide is {} m or more", tide.number_or_blank("min"));
    return fmt::format("while the tide is {} m or less", tide.number_or_blank("max"));
}

}  // namespace

std::string of_time(const Members& body) {
    std::vector<std::string> when;
    std::vector<std::string> some;
    for (const auto& span : body.texts("hours"))
        some.push_back(between(span, "between {} and {}", as_it_is));
    if (!some.empty()) when.push_back(listed_words(some, "or"));
    some.clear();
    for (const auto& day : body.texts("weekdays"))
        some.push_back(weekday(day));
    if (!some.empty()) when.push_back("on a " + listed_words(some, "or"));
    some.clear();
    for (const auto& span : body.texts("dates"))
        some.push_back(between(span, "from {} to {}, both included", month_day_words));
    if (!some.empty()) when.push_back(listed_words(some, "or"));
    if (body.has("daylight"))
        when.emplace_back(body.text("daylight") == "day" ? "between sunrise and sunset"
                                                         : "between sunset and sunrise");
    if (body.has("tide_level_m")) when.push_back(tide_words(Members(body.object("tide_level_m"))));
    if (body.has("tied_to")) when.push_back("while " + body.text("tied_to"));
    const std::string activity = activity_of(body);
    const std::string what = activity == "both"     ? "dredging or release"
                             : activity == "dredge" ? "dredging"
                                                    : "release";
    std::string words =
        !body.has("mode") ? std::string(blank) + " " + what
        : body.text("mode") == "allow"
            ? std::string(1, static_cast<char>(what.front() - 'a' + 'A')) + what.substr(1) + " only"
            : "No " + what;
    words += when.empty() ? " at any time" : " " + listed_words(when, "and");
    return words + scope_words(body);
}

}  // namespace spoilbook::sentence
