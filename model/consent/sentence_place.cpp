// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <cmath>

#include "model/consent/sentence_parts.h"

namespace spoilbook::sentence {

namespace {

std::string degrees(const Members& circle, const char* member, const char* positive, const char* negative) {
    const auto value = circle.number(member);
    if (!value) return blank;
    return numbered(std::abs(*value)) + "° " + (*value < 0 ? negative : positive);
}

std::string side_words(const Members& side) {
    if (side.has("circle")) {
        const Members circle(side.object("circle"));
        return fmt::format("the circle of {} m about {}, {}", circle.number_or_blank("radius_m"),
                           degrees(circle, "lat", "N", "S"), degrees(circle, "lon", "E", "W"));
    }
    if (side.has("ground")) return "the ground " + side.text("ground");
    if (side.has("cell")) return "the cell " + side.text("cell");
    if (side.has("exclusion")) return "the exclusion " + side.text("exclusion");
    return blank;
}

}  // namespace

std::string of_place(const Members& body) {
    const bool inside = body.has("inside");
    const std::string test = body.has("test") ? body.text("test") : "release_start";
    std::string words = "Each release";
    if (test == "whole_release")
        words += " from doors open to empty lies ";
    else
        words += test == "release_end" ? " ends " : " begins ";
    words += inside ? "inside " : "outside ";
    words += side_words(Members(body.object(inside ? "inside" : "outside")));
    if (body.has("inset_m"))
        words += fmt::format(", {} m or more from its line", body.number_or_blank("inset_m"));
    // A release at a place of its own is judged there; `applies` says which releases are meant.
    words += scope_words(body);
    if (activity_of(body) == "dredge") words += ", while dredging";
    if (body.has("position_u_m_max"))
        words += fmt::format("; a position counts only where its u is at most {} m",
                             body.number_or_blank("position_u_m_max"));
    if (body.has("track_interval_s_max"))
        words += fmt::format("; its track has a fix at least every {} s",
                             body.number_or_blank("track_interval_s_max"));
    return words;
}

}  // namespace spoilbook::sentence
