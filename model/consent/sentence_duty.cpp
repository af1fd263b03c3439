// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/consent/sentence_parts.h"

namespace spoilbook::sentence {

namespace {

std::string occasion_words(const Members& when) {
    if (when.has("cycle")) return "the end of each " + when.text("cycle");
    if (when.has("every")) {
        const Members every(when.object("every"));
        return fmt::format("each {} {} released", every.number_or_blank("value"),
                           every.has("measure") ? measure_words(every.text("measure")) : blank);
    }
    if (when.has("on_event")) {
        const std::string event = when.text("on_event");
        return event == "any" ? std::string("any event") : "an event: " + event;
    }
    return when.has("on_date") ? when.text("on_date") : std::string(blank);
}

std::string activity_word(const std::string& activity) {
    return activity == "dredge" ? "dredging" : activity;
}

}  // namespace

std::string due_words(const Members& body) {
    if (!body.has("due")) return "";
    const Members due(body.object("due"));
    if (due.names().empty()) return " by " + body.text("due");
    std::string words = " within " + span_words(due);
    if (due.has("after")) words += due.text("after") == "end" ? " of its end" : " of " + due.text("after");
    return words;
}

std::string of_duty(const Members& body) {
    const std::string what = body.has("what") ? body.text("what") : blank;
    std::string words = "A " + what + " is due" + due_words(body);
    words += (body.has("due") ? ", counted from " : " at ") + occasion_words(Members(body.object("when")));
    words += scope_words(body);
    const std::string activity = activity_of(body);
    if (activity != "both") words += ", for " + activity_word(activity);
    if (body.is_true("nil_required")) words += ", also when there is nothing to tell";
    std::vector<std::string> stopped;
    for (const auto& one : body.texts("blocks"))
        stopped.push_back(activity_word(one));
    if (!stopped.empty()) words += "; while it is overdue, no " + listed_words(stopped, "and no");
    return words;
}

}  // namespace spoilbook::sentence
