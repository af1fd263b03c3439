// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "app/command/command.h"
#include "model/answer/cell_said.h"
#include "model/answer/spot.h"
#include "model/answer/time_order.h"
#include "model/book/history.h"
#include "model/book/season.h"
#include "model/book/undo.h"
#include "model/consent/sentence.h"
#include "model/folder/nearest.h"
#include "model/logging/find_record.h"
#include "model/logging/log_record.h"
#include "model/logging/sign_shift.h"
#include "model/record/field_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Checked<const Kind*> kind_from(const std::string& name) {
    if (const Kind* found = find_kind(name)) return found;
    std::vector<std::string> names;
    for (const auto& kind : all_kinds())
        names.push_back(kind.name);
    return Refusal{"unknown-kind", "", "there is no kind of record \"" + name + "\"",
                   did_you_mean(name, names)};
}

std::vector<FieldInput> inputs_from(const std::vector<std::string>& pairs) {
    std::vector<FieldInput> inputs;
    for (const auto& pair : pairs) {
        const auto equals = pair.find('=');
        if (equals == std::string::npos || equals == 0)
            throw CLI::ValidationError("COLUMN=VALUE", "\"" + pair + "\" has no =");
        inputs.push_back({pair.substr(0, equals), pair.substr(equals + 1)});
    }
    return inputs;
}

bool has_any(const std::vector<FieldInput>& inputs, const std::set<std::string>& columns) {
    return std::any_of(inputs.begin(), inputs.end(),
                       [&](const FieldInput& input) { return columns.contains(input.column); });
}

/// A position that was written just now, held against its ground, and its cell against it.
void note_place(const Book& book, const Kind& kind, const std::string& label,
                const std::vector<FieldInput>& inputs) {
    if (kind.name != "trip" && kind.name != "release") return;
    const bool placed = has_any(inputs, {"lat", "lon"});
    const bool told = placed || has_any(inputs, {"ground", "cell", "position_u_m", "release_start",
                                                 "release_end", "doors_open", "empty", "doors_shut"});
    const auto row = told ? book.labelled(kind, label) : std::nullopt;
    if (!row) return;
    const Season season = read_season(book);
    const GroundMap map(season);
    const std::string where = kind.name + " " + label;
    if (const auto spot = placed ? spot_of_row(season, map, kind, *row) : std::nullopt)
        print_notes({{where, spot_text(*spot)}});
    if (const auto cell = cell_said_text(cell_said(season, map, kind, *row)); !cell.empty())
        print_notes({{where, cell}});
}

/// Times that were written just now and cannot be true beside others.
void note_times(const Book& book, const Kind& kind, const std::string& label,
                const std::vector<FieldInput>& inputs) {
    const bool timed = std::any_of(inputs.begin(), inputs.end(), [&](const FieldInput& input) {
        const auto index = kind.index_of(input.column);
        return index && (kind.fields[*index].type == FieldType::instant ||
                         kind.fields[*index].type == FieldType::reference);
    });
    const auto row = timed ? book.labelled(kind, label) : std::nullopt;
    if (!row) return;
    const Season season = read_season(book);
    for (const auto& finding : time_findings(season, kind, row->id)) {
        // Two times of one row are told once.
        const bool is_own = finding.other_kind == &kind && finding.other == label;
        if (!is_own || finding.early)
            print_notes({{kind.name + " " + label, time_finding_text(finding, season.zone)}});
    }
}

Checked<Said> log_one(Book& book, const Options& options, const std::string& kind_name,
                      const std::string& label, const std::vector<FieldInput>& inputs) {
    const auto kind = kind_from(kind_name);
    if (!kind) return kind.refusals();
    const auto logged = log_record(book, act_of(options), **kind, label, inputs);
    if (!logged) return logged.refusals();
    note_place(book, **kind, label, inputs);
    note_times(book, **kind, label, inputs);
    Said said;
    const std::string deed = logged->made ? "made" : logged->entry ? "changed" : "unchanged";
    said.json = {{"kind", (*kind)->name},
                 {"id", label},
                 {"done", deed},
                 {"entry", logged->entry ? Json(name_text(*logged->entry)) : Json(nullptr)}};
    said.text = fmt::format("{} {}: {}{}\n", (*kind)->name, label, deed,
                            logged->entry ? ", entry " + name_text(*logged->entry) : "");
    return said;
}

Said say_entry(const std::string& what, const EntryName& entry) {
    Said said;
    said.json = {{"done", what}, {"entry", name_text(entry)}};
    said.text = fmt::format("{}, entry {}\n", what, name_text(entry));
    return said;
}

std::string shown(const Book& book, const Field* field, const Value& value, const Zone& zone) {
    if (field == nullptr) return is_blank(value) ? "no" : "yes";
    if (field->type == FieldType::reference && !is_blank(value))
        return book.label_of(kind(field->refers_to), std::get<Id>(value));
    return field_text(*field, value, zone);
}

Json step_json(const Book& book, const Kind& kind, const RowStep& step, const Zone& zone, std::string& text) {
    Json fields = Json::array();
    text +=
        fmt::format("{} {} {} by {}{}{}\n", instant_text(step.at, zone), name_text(step.entry),
                    kind_text(step.kind), step.who.empty() ? "someone" : step.who,
                    step.why.empty() ? "" : ": " + step.why, step.after_signing ? " (after signing)" : "");
    for (const auto& change : step.fields) {
        const auto index = kind.index_of(change.field);
        const Field* field = index ? &kind.fields[*index] : nullptr;
        const auto before = shown(book, field, change.before, zone);
        const auto after = shown(book, field, change.after, zone);
        fields.push_back({{"column", change.field},
                          {"before", before.empty() ? Json(nullptr) : Json(before)},
                          {"after", after.empty() ? Json(nullptr) : Json(after)}});
        text += fmt::format("    {}: {} → {}\n", change.field, before.empty() ? "blank" : before,
                            after.empty() ? "blank" : after);
    }
    return {{"entry", name_text(step.entry)},
            {"at", instant_text(step.at, zone)},
            {"who", step.who},
            {"why", step.why},
            {"kind", kind_text(step.kind)},
            {"made", step.made},
            {"removed", step.removed},
            {"after_signing", step.after_signing},
            {"fields", fields}};
}

/// What the condition asks, in words.
void put_sentence(const Condition& condition, const Zone& zone, Said& said) {
    said.json["sentence"] = condition_sentence(condition);
    said.json["notes"] = condition_notes(condition, zone);
    said.text += fmt::format("{:<22} {}\n", "sentence", condition_sentence(condition));
    for (const auto& note : condition_notes(condition, zone))
        said.text += fmt::format("{:<22} {}\n", "", note);
}

Checked<Said> show(const Options& options, const std::string& kind_name, const std::string& label,
                   bool with_history) {
    auto opened = Book::open_to_read(options.book);
    if (!opened) return opened.refusals();
    const auto copy = book_then(options, *opened, AsAt::rows);
    if (!copy) return copy.refusals();
    const Book& book = *copy ? **copy : *opened;
    const auto kind = kind_from(kind_name);
    if (!kind) return kind.refusals();
    const auto row = find_record(book, **kind, label, std::nullopt);
    if (!row) return row.refusals();
    if (!*row)
        return Refusal{"no-such-row", (*kind)->name + " " + label, "there is no such " + (*kind)->name,
                       "look its label up"};
    const Zone zone = book_zone(book);
    Said said;
    said.json = {{"kind", (*kind)->name}, {"id", label}, {"fields", Json::object()}};
    for (std::size_t i = 0; i < (*kind)->fields.size(); ++i) {
        const auto& field = (*kind)->fields[i];
        const auto text = shown(book, &field, (*row)->values[i], zone);
        said.json["fields"][field.name] = text.empty() ? Json(nullptr) : Json(text);
        if (!text.empty()) said.text += fmt::format("{:<22} {}\n", field.name, text);
    }
    if ((*kind)->name == "condition") put_sentence(definition<Condition>().read(**row), zone, said);
    if (!with_history) return said;
    const auto known = known_at_given(options, *opened);
    std::optional<std::set<EntryName>> then;
    if (*known) then = entries_at(*opened, **known);
    said.json["history"] = Json::array();
    for (const auto& step : history(*opened, **kind, (*row)->id)) {
        if (!then || then->contains(step.entry))
            said.json["history"].push_back(step_json(book, **kind, step, zone, said.text));
    }
    return said;
}

void add_log(CLI::App& program, Options& options, Task& task) {
    auto kind = std::make_shared<std::string>();
    auto label = std::make_shared<std::string>();
    auto pairs = std::make_shared<std::vector<std::string>>();
    auto* log = add_command(program, options, "log", "write or change one record");
    add_write_options(*log, options);
    log->add_option("kind", *kind, "trip, load, station, …")->required();
    log->add_option("id", *label, "its label: T-0412")->required();
    log->add_option("column=value", *pairs, "what to write; a blank value clears; struck=yes strikes out");
    log->callback([&options, &task, kind, label, pairs] {
        const auto inputs = inputs_from(*pairs);
        task = [&options, kind, label, inputs] {
            return write_book(options,
                              [&](Book& book) { return log_one(book, options, *kind, *label, inputs); });
        };
    });
}

void add_sign(CLI::App& program, Options& options, Task& task) {
    auto label = std::make_shared<std::string>();
    auto* sign = add_command(program, options, "sign", "sign a shift sheet");
    add_write_options(*sign, options);
    sign->add_option("shift", *label, "the shift's number")->required();
    sign->callback([&options, &task, label] {
        task = [&options, label] {
            return write_book(options, [&](Book& book) -> Checked<Said> {
                const auto entry = sign_shift(book, act_of(options), *label);
                if (!entry) return entry.refusals();
                return say_entry("signed", *entry);
            });
        };
    });
}

int take_back_or_restore(const Options& options, bool back) {
    return write_book(options, [&](Book& book) -> Checked<Said> {
        const auto entry = back ? undo(book, act_of(options)) : redo(book, act_of(options));
        if (!entry) return entry.refusals();
        return say_entry(back ? "taken back" : "restored", *entry);
    });
}

void add_undo_and_redo(CLI::App& program, Options& options, Task& task) {
    for (const bool back : {true, false}) {
        auto* command = add_command(program, options, back ? "undo" : "redo",
                                    back ? "take back your newest change" : "restore what you took back");
        add_write_options(*command, options);
        command->callback([&options, &task, back] {
            task = [&options, back] { return take_back_or_restore(options, back); };
        });
    }
}

void add_show(CLI::App& program, Options& options, Task& task) {
    auto kind = std::make_shared<std::string>();
    auto label = std::make_shared<std::string>();
    auto* show_command = add_command(program, options, "show", "one record, and how it came to be so");
    auto with_history = std::make_shared<bool>(false);
    add_read_options(*show_command, options);
    show_command->add_option("kind", *kind, "trip, load, station, …")->required();
    show_command->add_option("id", *label, "its label")->required();
    show_command->add_flag("--history", *with_history, "every entry that touched it");
    show_command->callback([&options, &task, kind, label, with_history] {
        task = [&options, kind, label, with_history] {
            const auto said = show(options, *kind, *label, *with_history);
            return said ? say(options, *said) : refuse(options, said.refusals());
        };
    });
}

}  // namespace

void add_write_commands(CLI::App& program, Options& options, Task& task) {
    add_log(program, options, task);
    add_sign(program, options, task);
    add_undo_and_redo(program, options, task);
    add_show(program, options, task);
}

}  // namespace spoilbook
