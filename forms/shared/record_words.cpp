// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/record_words.h"

#include <QDate>
#include <QLocale>
#include <memory>
#include <unordered_map>

#include "forms/shared/time_typed.h"
#include "model/record/field_text.h"

namespace spoilbook::form {
namespace {

// The zone is the book's for every time of a table: its head says so once, and the day is short.
QString instant_shown(Instant at, const Zone& zone) {
    const WallTime wall = zone.wall(at);
    const QDate date(wall.day.year, wall.day.month, wall.day.day);
    return QLocale().toString(date, QStringLiteral("d MMM yyyy")) + u' ' + time_shown(at, zone);
}

}  // namespace

QString field_title(const Field& field) {
    QString title = QString::fromStdString(field.name);
    for (const char* unit : {"_t_m3", "_m3", "_t", "_m", "_kn", "_h", "_min", "_s", "_deg", "_pct", "_l_h"}) {
        const QString ending = QString::fromLatin1(unit);
        if (!field.unit.empty() && title.endsWith(ending)) {
            title.chop(ending.size());
            break;
        }
    }
    title.replace(u'_', u' ');
    if (!title.isEmpty()) title[0] = title[0].toUpper();
    return title;
}

LabelOf asking(const Book& book) {
    return
        [&book](const Kind& kind, const Id& id) { return QString::fromStdString(book.label_of(kind, id)); };
}

LabelOf read_labels(const Book& book, const Kind& kind) {
    auto labels = std::make_shared<std::unordered_map<Id, QString>>();
    for (const Field& field : kind.fields) {
        if (field.type != FieldType::reference) continue;
        const Kind& other = spoilbook::kind(field.refers_to);
        // A label stands in the row itself, where it is a text.
        const std::size_t at = other.label.empty() ? 0 : *other.index_of(other.label.front());
        for (const Row& row : book.rows(other, true)) {
            const auto* text = std::get_if<std::string>(&row.values[at]);
            labels->emplace(row.id, QString::fromStdString(text ? *text : book.label_of(other, row.id)));
        }
    }
    return [labels](const Kind&, const Id& id) {
        const auto found = labels->find(id);
        return found == labels->end() ? QString() : found->second;
    };
}

QString value_copied(const LabelOf& label_of, const Field& field, const Value& value, const Zone& zone) {
    if (is_blank(value)) return {};
    if (field.type == FieldType::reference) {
        return label_of(kind(field.refers_to), std::get<Id>(value));
    }
    return QString::fromStdString(field_text(field, value, zone));
}

QString value_shown(const LabelOf& label_of, const Field& field, const Value& value, const Zone& zone) {
    if (is_blank(value)) return {};
    switch (field.type) {
        case FieldType::instant:
            return instant_shown({std::get<std::int64_t>(value)}, zone);
        case FieldType::number:
            if (const double* number = std::get_if<double>(&value)) {
                return QLocale().toString(*number, 'g', QLocale::FloatingPointShortest);
            }
            return value_copied(label_of, field, value, zone);
        case FieldType::choice:
            return value_copied(label_of, field, value, zone).replace(u'_', u' ');
        default:
            return value_copied(label_of, field, value, zone);
    }
}

QString value_shown(const Book& book, const Field& field, const Value& value, const Zone& zone) {
    return value_shown(asking(book), field, value, zone);
}

QString value_copied(const Book& book, const Field& field, const Value& value, const Zone& zone) {
    return value_copied(asking(book), field, value, zone);
}

}  // namespace spoilbook::form
