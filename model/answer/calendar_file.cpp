// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/calendar_file.h"

#include <fmt/format.h>

#include "model/consent/due_days.h"
#include "model/consent/duty_word.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

constexpr std::size_t most_octets = 75;

/// 20251114T110000Z: FORM #2 of section 3.3.5. Whole seconds, as the format has no parts of them.
std::string utc_text(Instant at) {
    const auto wall = Zone::utc().wall(at);
    return fmt::format("{:04}{:02}{:02}T{:02}{:02}{:02}Z", wall.day.year, wall.day.month, wall.day.day,
                       wall.hour, wall.minute, wall.second);
}

std::string line(const std::string& name, const std::string& text) {
    return folded_line(name + ":" + escaped_text(text));
}

std::string summary_of(const DutyTime& time) {
    std::string summary = fmt::format("Condition {}: {}", time.condition->condition, time.duty.what);
    if (!time.condition->text.empty()) summary += ", " + time.condition->text;
    return summary;
}

std::string description_of(const DutyTime& time, const Zone& zone) {
    std::string said = fmt::format("{}\nArises {}", duty_word(time), instant_text(*time.arises, zone));
    if (time.covers && time.covers->from != time.covers->to)
        said += fmt::format("\nCovers {} to {}, not included", instant_text(time.covers->from, zone),
                            instant_text(time.covers->to, zone));
    if (time.event != nullptr && !time.event->what.empty()) said += "\n" + time.event->what;
    if (time.due) said += "\nDue " + due_text(*time.due, zone);
    if (const auto listed = listed_text(time, zone); !listed.empty()) said += "; " + listed;
    return said + "\nThe consent's text prevails.";
}

/// What tells one time of a duty from every other, whatever its state, and whatever the text says by now.
std::string uid_of(const DutyTime& time, const Season& season) {
    std::string mark = fmt::format("{}/{}/{}", time.consent == nullptr ? "" : time.consent->consent,
                                   time.condition->condition, season.harbour.name);
    if (time.event != nullptr)
        mark += "/" + hex(time.event->id);
    else if (time.step)
        mark += fmt::format("/{}", *time.step);
    else
        mark += "/" + utc_text(time.covers ? time.covers->from : *time.arises);
    return mark + "@spoilbook";
}

struct CalendarTask {
    std::string uid, summary, description;
    std::optional<Instant> due;
    bool done = false;
    std::optional<Instant> done_at;  ///< where it is known
};

std::string text_of(const CalendarTask& task, Instant as_at) {
    std::string text = "BEGIN:VTODO\r\n";
    text += line("UID", task.uid);
    text += "DTSTAMP:" + utc_text(as_at) + "\r\n";
    text += line("SUMMARY", task.summary);
    text += line("DESCRIPTION", task.description);
    if (task.due) text += "DUE:" + utc_text(*task.due) + "\r\n";
    text += task.done ? "STATUS:COMPLETED\r\n" : "STATUS:NEEDS-ACTION\r\n";
    if (task.done && task.done_at) text += "COMPLETED:" + utc_text(*task.done_at) + "\r\n";
    return text + "END:VTODO\r\n";
}

CalendarTask task_of(const DutyTime& time, const Season& season) {
    const bool done = time.state == DutyState::done;
    return {uid_of(time, season),
            summary_of(time),
            description_of(time, season.zone),
            time.due,
            done,
            done ? time.done->done_at : std::nullopt};
}

std::string description_of(const ResponseTime& time, const Zone& zone) {
    const auto& event = time.answer.record.event;
    std::string said =
        fmt::format("{}\nOver since {}, passed {}, {}, peak {:.2f}", duty_word(time.state, time.late()),
                    instant_text(event.over_since, zone), instant_text(event.start, zone),
                    event.end ? "all clear " + instant_text(*event.end, zone) : "open", event.peak);
    if (!time.response.to.empty()) said += "\nTo " + time.response.to;
    if (time.due) said += "\nDue " + due_text(*time.due, zone);
    if (time.answer.row != nullptr && !time.answer.row->action.empty())
        said += "\nAnswered: " + time.answer.row->action;
    return said + "\nThe consent's text prevails.";
}

/// `nth`: of the responses to its trigger, which one.
CalendarTask task_of(const ResponseTime& time, std::size_t nth, const Season& season) {
    const auto& record = time.answer.record;
    const auto& text = record.version().condition->text;
    CalendarTask task;
    task.uid = fmt::format(
        "{}/{}/{}/{}/{}/{}@spoilbook", record.of->consent == nullptr ? "" : record.of->consent->consent,
        record.of->number, season.harbour.name, record.event.site, utc_text(record.event.start), nth);
    task.summary = fmt::format("Condition {}: {} for {}{}{}", record.of->number, time.response.action,
                               record.event.site, text.empty() ? "" : ", ", text);
    task.description = description_of(time, season.zone);
    task.due = time.due;
    task.done = time.state == DutyState::done;
    task.done_at = time.answer.told_at;
    return task;
}

}  // namespace

std::string folded_line(const std::string& line) {
    std::string folded;
    std::size_t octets = 0;
    for (std::size_t at = 0; at < line.size();) {
        std::size_t length = 1;
        while (at + length < line.size() && (static_cast<unsigned char>(line[at + length]) & 0xC0U) == 0x80U)
            ++length;
        if (octets + length > most_octets) {
            folded += "\r\n ";
            octets = 1;
        }
        folded.append(line, at, length);
        octets += length;
        at += length;
    }
    return folded + "\r\n";
}

std::string escaped_text(const std::string& text) {
    std::string escaped;
    for (const char letter : text) {
        if (letter == '\n')
            escaped += "\\n";
        else if (letter == '\\' || letter == ';' || letter == ',')
            escaped += std::string("\\") + letter;
        else if (letter == '\t' || (static_cast<unsigned char>(letter) >= 0x20 && letter != 0x7F))
            escaped += letter;
    }
    return escaped;
}

std::string calendar_file(const std::vector<DutyTime>& times, const std::vector<ResponseTime>& responses,
                          const Season& season, Instant as_at) {
    std::string file =
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Spoilbook//duties//EN\r\nCALSCALE:GREGORIAN\r\n";
    for (const auto& time : times) {
        if (time.arises && time.state != DutyState::nil) file += text_of(task_of(time, season), as_at);
    }
    std::size_t nth = 0;
    for (std::size_t i = 0; i < responses.size(); ++i) {
        const auto& event = responses[i].answer.record.event;
        const bool again = i > 0 && responses[i - 1].answer.record.of == responses[i].answer.record.of &&
                           responses[i - 1].answer.record.event.site == event.site &&
                           responses[i - 1].answer.record.event.start == event.start;
        nth = again ? nth + 1 : 0;
        file += text_of(task_of(responses[i], nth, season), as_at);
    }
    return file + "END:VCALENDAR\r\n";
}

}  // namespace spoilbook
