// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/consent/sentence_parts.h"

namespace spoilbook::sentence {

namespace {

std::string window_words(const Members& window) {
    const std::string kind = window.text("kind");
    if (kind == "term") return "over the whole term of the consent";
    if (kind == "calendar") {
        const std::string unit = window.text("unit");
        return "in a calendar " + (unit == "iso_week" ? std::string("week") : unit);
    }
    if (kind == "consent_year") return "in a year of the consent";
    if (kind == "rolling") return "in any " + span_words(window);
    if (kind == "mean")
        return fmt::format("a year, as the mean of any {} years", window.number_or_blank("years"));
    if (kind == "campaign")
        return window.has("name") ? "in the campaign " + window.text("name") : std::string("in a campaign");
    if (kind == "phase") return fmt::format("from {} until {}", window.text("from"), window.text("to"));
    if (kind == "trip") return "on one trip";
    return blank;
}

/// "215 000 m³ in situ", "15 % of 240 000 m³ in situ".
std::string amount_words(const Members& body) {
    const std::string measure = body.has("measure") ? measure_words(body.text("measure")) : blank;
    if (!body.has("share_of_total")) return body.number_or_blank("value") + " " + measure;
    const std::string share = body.number_or_blank("share_of_total", 100) + " %";
    if (body.number("of")) return fmt::format("{} of {} {}", share, body.number_or_blank("of"), measure);
    const Members total(body.object("of"));
    std::string words = fmt::format("{} of the total of {} so far", share, measure);
    if (total.has("floor")) words += fmt::format(", once that is {}", total.number_or_blank("floor"));
    return words;
}

std::string reserve_words(const Members& reserve) {
    std::string words =
        fmt::format(", of which {} is held back until it is unlocked", reserve.number_or_blank("value"));
    if (!reserve.has("unlocked_by")) return words;
    const Members by(reserve.object("unlocked_by"));
    if (by.names().empty()) return words + " by " + reserve.text("unlocked_by");
    if (by.has("by")) words += " by " + by.text("by");
    if (by.has("letter")) words += fmt::format(" (letter {})", by.text("letter"));
    return by.has("on") ? words + ", on " + by.text("on") : words;
}

}  // namespace

std::string of_quantity(const Members& body) {
    const bool at_least = body.has("op") && body.text("op") == "at_least";
    std::string words = (at_least ? "At least " : "No more than ") + amount_words(body);
    if (body.has("each_of") && body.text("each_of") != "none") words += " for each " + body.text("each_of");
    words += " " + window_words(Members(body.object("window")));
    words += activity_of(body) == "dredge" ? ", counted when it is loaded" : ", counted at release";
    words += scope_words(body);
    if (body.has("method")) words += ", as known by " + body.text("method") + " alone";
    if (body.has("reserve")) words += reserve_words(Members(body.object("reserve")));
    return words;
}

}  // namespace spoilbook::sentence
