// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <filesystem>
#include <fstream>

#include "app/command/condition_rows.h"
#include "model/answer/calendar_file.h"
#include "model/answer/response_times.h"
#include "model/consent/due_days.h"
#include "model/consent/duty_word.h"
#include "model/consent/quantity_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Json blocks_json(const Duty& duty) {
    Json list = Json::array();
    if (duty.blocks_dredge) list.push_back("dredge");
    if (duty.blocks_release) list.push_back("release");
    return list;
}

/// What is missing until the next step, under the measure's own name.
void put_step(const DutyTime& time, Json& row) {
    const bool counts = time.duty.when == DutyWhen::amount;
    const auto measure = time.duty.counted.measure;
    const bool in_m3 = measure == LimitMeasure::in_situ_m3 || measure == LimitMeasure::hopper_m3;
    row["measure"] = counts ? Json(measure_text(measure)) : Json(nullptr);
    row["step"] = number_or_null(time.step);
    row["to_go"] = number_or_null(time.to_go);
    row["to_go_m3"] = in_m3 ? number_or_null(time.to_go) : Json(nullptr);
    row["unknown"] = counts ? Json(time.unknown) : Json(nullptr);
}

/// How the due time was counted.
void put_counting(const DutyTime& time, const Zone& zone, Json& row) {
    const auto days = due_days(time, zone);
    row["counted_after"] = days ? Json(day_text(days->after)) : Json(nullptr);
    row["not_working"] = Json::array();
    row["holidays_listed_to"] = days && days->listed_to ? Json(*days->listed_to) : Json(nullptr);
    if (!days) return;
    for (const Day day : days->not_working)
        row["not_working"].push_back(day_text(day));
}

/// Only a calendar is written over: the next one takes its place, anything else at that path stays.
Checked<Done> write_calendar(const std::string& path, const std::string& bytes) {
    constexpr std::string_view first = "BEGIN:VCALENDAR";
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored)) {
        std::string start(first.size(), ' ');
        std::ifstream(path, std::ios::binary).read(start.data(), static_cast<std::streamsize>(first.size()));
        if (start != first)
            return Refusal{"not-empty", path, "there is a file of that name, and it is no calendar",
                           "choose another name"};
    }
    const std::string beside = path + ".part";
    std::ofstream out(beside, std::ios::binary);
    out << bytes;
    out.close();
    std::error_code failed;
    if (out) std::filesystem::rename(beside, path, failed);
    if (out && !failed) return Done{};
    std::filesystem::remove(beside, ignored);
    return Refusal{"cannot-write", path, "the calendar cannot be written there",
                   "choose a folder that you may write to, with room"};
}

Json response_json(const ResponseTime& time, const Zone& zone) {
    const auto& record = time.answer.record;
    const Event* row = time.answer.row;
    Json json;
    json["consent"] = record.of->consent == nullptr ? Json(nullptr) : Json(record.of->consent->consent);
    json["condition"] = record.of->number;
    json["tier"] = number_or_null(record.version().rule.tier);
    json["site"] = record.event.site;
    json["event"] = record.event.end ? "closed" : "open";
    json["action"] = time.response.action;
    json["to"] = text_or_null(time.response.to);
    json["arises"] = instant_text(record.event.start, zone);
    json["due"] = instant_or_null(time.due, zone);
    json["state"] = text(time.state);
    json["late"] = time.late();
    json["told_at"] = instant_or_null(time.answer.told_at, zone);
    json["answered_with"] = row == nullptr ? Json(nullptr) : text_or_null(row->action);
    return json;
}

std::string response_line(const ResponseTime& time, const Zone& zone) {
    const auto& record = time.answer.record;
    std::string line =
        fmt::format("{:<9} condition {} {} for {}, passed {}{}", duty_word(time.state, time.late()),
                    record.of->number, time.response.action, record.event.site,
                    instant_text(record.event.start, zone), record.event.end ? "" : ", still open");
    if (!time.response.to.empty()) line += ", to " + time.response.to;
    if (time.due) line += ", due " + due_text(*time.due, zone);
    return line + "\n";
}

/// What passed triggers ask for, and by when.
void put_responses(const std::vector<ResponseTime>& responses, const Reading& reading, Said& said) {
    said.json["responses"] = Json::array();
    for (const auto& time : responses) {
        said.json["responses"].push_back(response_json(time, reading.season.zone));
        said.text += response_line(time, reading.season.zone);
    }
}

Checked<Said> say_duties(const Reading& reading, const std::string& calendar) {
    Refusals unread;
    const auto times = duty_calendar(*reading.ledger, reading.as_at, &unread);
    if (!unread.empty()) return unread;
    const Zone& zone = reading.season.zone;
    Said said;
    said.json["as_at"] = instant_text(reading.as_at, zone);
    said.json["duties"] = Json::array();
    for (const auto& time : times) {
        said.json["duties"].push_back(duty_json(time, zone));
        said.text += duty_line(time, zone);
    }
    TurbidityWatch watch(*reading.book, reading.season, reading.as_at);
    for (const auto& refusal : watch.unread())
        print_notes({{refusal.where, refusal.what}});
    const auto responses = response_times(watch, reading.season, reading.as_at);
    put_responses(responses, reading, said);
    if (said.text.empty()) said.text = "no condition asks for anything by a day\n";
    if (calendar.empty()) return said;
    const auto written =
        write_calendar(calendar, calendar_file(times, responses, reading.season, reading.as_at));
    if (!written) return written.refusals();
    said.text += "calendar written to " + calendar + "\n";
    return said;
}

}  // namespace

nlohmann::ordered_json duty_json(const DutyTime& time, const Zone& zone) {
    Json row;
    row["consent"] = time.consent == nullptr ? Json(nullptr) : Json(time.consent->consent);
    row["condition"] = time.condition->condition;
    row["text"] = text_or_null(time.condition->text);
    row["what"] = time.duty.what;
    row["covers_from"] = time.covers ? Json(instant_text(time.covers->from, zone)) : Json(nullptr);
    row["covers_to"] = time.covers ? Json(instant_text(time.covers->to, zone)) : Json(nullptr);
    row["arises"] = instant_or_null(time.arises, zone);
    row["due"] = instant_or_null(time.due, zone);
    row["state"] = text(time.state);
    row["late"] = time.late();
    row["done_at"] = time.done == nullptr ? Json(nullptr) : instant_or_null(time.done->done_at, zone);
    row["by"] = time.done == nullptr ? Json(nullptr) : text_or_null(time.done->by);
    row["evidence"] = time.done == nullptr ? Json(nullptr) : text_or_null(time.done->evidence);
    row["event"] = time.event == nullptr ? Json(nullptr) : text_or_null(time.event->what);
    row["blocks"] = blocks_json(time.duty);
    put_step(time, row);
    put_counting(time, zone, row);
    return row;
}

std::string duty_line(const DutyTime& time, const Zone& zone) {
    std::string line =
        fmt::format("{:<9} condition {} {}", duty_word(time), time.condition->condition, time.duty.what);
    if (time.to_go)
        return line + fmt::format(" at {:.0f} {}, {:.0f} to go\n", *time.step, unit_text(time.duty.counted),
                                  *time.to_go);
    if (time.step)
        line += fmt::format(" at {:.0f} {}, reached {}", *time.step, unit_text(time.duty.counted),
                            instant_text(*time.arises, zone));
    else if (time.covers)
        line += fmt::format(" of {}", instant_text(time.covers->from, zone));
    if (time.due) line += ", due " + due_text(*time.due, zone);
    if (time.done != nullptr) line += ", done " + instant_text(*time.done->done_at, zone);
    if (const auto listed = listed_text(time, zone); !listed.empty()) line += "; " + listed;
    return line + "\n";
}

void add_duties_command(CLI::App& program, Options& options, Task& task) {
    auto calendar = std::make_shared<std::string>();
    auto* duties = add_command(program, options, "duties", "what the consents ask for, and by when");
    add_read_options(*duties, options);
    duties->add_option("--calendar", *calendar, "also write these times to a calendar file (RFC 5545)");
    duties->callback([&options, &task, calendar] {
        task = [&options, calendar] {
            return read_book(options, [&](const Reading& reading) { return say_duties(reading, *calendar); });
        };
    });
}

}  // namespace spoilbook
