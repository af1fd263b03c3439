// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "forms/consent/condition_blank.h"
#include "forms/shared/number_typed.h"

namespace spoilbook::form {
namespace {

using Pointer = nlohmann::json::json_pointer;

const Draft* member(const Draft& draft, const std::string& at) {
    const Pointer pointer(at);
    return draft.contains(pointer) ? &draft.at(pointer) : nullptr;
}

QString number_text(double value, const QLocale& locale) {
    return locale.toString(value, 'g', 12);
}

QString text_of(const Draft& value, double times, const QLocale& locale) {
    if (value.is_number()) return number_text(value.get<double>() * times, locale);
    return value.is_string() ? QString::fromStdString(value.get<std::string>()) : QString();
}

QString list_of(const Draft& value, double times, const QLocale& locale) {
    if (!value.is_array()) return text_of(value, times, locale);
    QStringList parts;
    for (const Draft& one : value)
        parts << text_of(one, times, locale);
    return parts.join(QStringLiteral(", "));
}

Draft typed_number(const QString& typed, double times, const QLocale& locale) {
    const auto number = number_typed(typed, locale);
    if (!number) return typed.toStdString();
    // 15 % is kept as 0.15 and not as its neighbour in binary digits.
    return times == 1 ? *number : QString::number(*number * times, 'g', 12).toDouble();
}

Draft typed_degrees(const QString& typed, Axis axis, const QLocale& locale) {
    const auto degrees = degrees_typed(typed, axis, locale);
    return degrees ? Draft(*degrees) : Draft(typed.toStdString());
}

Draft typed_list(const QString& typed, bool numbers, const QLocale& locale) {
    Draft list = Draft::array();
    // In a list of numbers a comma may be a decimal one: there a semicolon parts them too.
    for (const QString& part :
         typed.split(numbers && typed.contains(u';') ? u';' : u',', Qt::SkipEmptyParts)) {
        if (part.trimmed().isEmpty()) continue;
        list.push_back(numbers ? typed_number(part.trimmed(), 0.01, locale)
                               : Draft(part.trimmed().toStdString()));
    }
    return list;
}

/// The member that stands takes the place of the others; what it holds is asked next.
void choose(Draft& draft, const Blank& blank, const std::string& key) {
    Draft& object = blank.at.empty() ? draft : draft[Pointer(blank.at)];
    if (!object.is_object()) object = Draft::object();
    for (const Choice& choice : blank.choices) {
        const std::string other = choice.key.toStdString();
        if (other != key) object.erase(other);
    }
    if (!key.empty() && !object.contains(key)) object[key] = key == "at_once" ? Draft(true) : Draft(nullptr);
}

}  // namespace

QString held_in(const Draft& draft, const Blank& blank, const QLocale& locale) {
    const Draft* value = blank.at.empty() ? &draft : member(draft, blank.at);
    if (!value) return {};
    if (blank.holds == BlankHolds::which) {
        for (const Choice& choice : blank.choices) {
            if (value->is_object() && value->contains(choice.key.toStdString())) return choice.key;
        }
        return {};
    }
    if (blank.holds == BlankHolds::truth)
        return value->is_boolean() && value->get<bool>() ? QStringLiteral("yes") : QString();
    const bool per_cent = blank.holds == BlankHolds::percent || blank.holds == BlankHolds::numbers;
    return list_of(*value, per_cent ? 100 : 1, locale);
}

void put_in(Draft& draft, const Blank& blank, const QString& typed, const QLocale& locale) {
    const QString text = typed.trimmed();
    if (blank.holds == BlankHolds::which) return choose(draft, blank, text.toStdString());
    Draft& value = draft[Pointer(blank.at)];
    if (text.isEmpty()) {
        value = nullptr;
        return;
    }
    const bool is_word = std::any_of(blank.choices.begin(), blank.choices.end(),
                                     [&](const Choice& choice) { return choice.key == text; });
    if (blank.holds == BlankHolds::truth)
        value = true;
    else if (blank.holds == BlankHolds::number || blank.holds == BlankHolds::percent)
        value = typed_number(text, blank.holds == BlankHolds::percent ? 0.01 : 1, locale);
    else if (blank.holds == BlankHolds::latitude || blank.holds == BlankHolds::longitude)
        value = typed_degrees(text, blank.holds == BlankHolds::latitude ? Axis::latitude : Axis::longitude,
                              locale);
    else if (blank.holds == BlankHolds::numbers)
        value = typed_list(text, true, locale);
    else if (blank.holds == BlankHolds::texts || (blank.holds == BlankHolds::word_or_texts && !is_word))
        value = typed_list(text, false, locale);
    else
        value = text.toStdString();
}

void change_kind(Draft& draft, const std::string& kind) {
    Draft kept = Draft::object();
    for (const char* name : {"condition", "text", "wording", "from", "to", "applies", "warn_at", "responses",
                             "open_question", "settled"}) {
        if (draft.contains(name)) kept[name] = draft[name];
    }
    kept["kind"] = kind;
    draft = std::move(kept);
}

Draft without_blanks(const Draft& draft) {
    if (!draft.is_structured()) return draft;
    Draft kept = draft.is_array() ? Draft::array() : Draft::object();
    for (const auto& [name, value] : draft.items()) {
        Draft inner = without_blanks(value);
        if (inner.is_null() || (inner.is_structured() && inner.empty())) continue;
        if (draft.is_array())
            kept.push_back(std::move(inner));
        else
            kept[name] = std::move(inner);
    }
    return kept;
}

std::string pointer_of(const std::string& where) {
    const auto blank = where.find(' ');
    if (blank == std::string::npos) return "";
    std::string pointer;
    for (const char c : where.substr(blank + 1)) {
        if (c == '.' || c == '[')
            pointer += '/';
        else if (c != ']')
            pointer += c;
    }
    return "/" + pointer;
}

}  // namespace spoilbook::form
