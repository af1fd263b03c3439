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

// So many of its values name a record that has no label.
constexpr int most_words = 3;

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

QString record_title(const Book& book, const Kind& kind, const Row& row, const Zone& zone) {
    const LabelOf label_of = asking(book);
    const auto text_at = [&](std::size_t index) {
        return value_shown(label_of, kind.fields[index], row.values[index], zone);
    };
    QStringList words;
    for (const std::string& name : kind.label) {
        const QString text = text_at(*kind.index_of(name));
        if (!text.isEmpty()) words << text;
    }
    for (std::size_t i = 0; words.isEmpty() && i < kind.fields.size(); ++i) {
        if (is_blank(row.values[i])) continue;
        for (std::size_t j = i; j < kind.fields.size() && words.size() < most_words; ++j) {
            if (!is_blank(row.values[j])) words << text_at(j);
        }
    }
    return QString::fromStdString(kind.name).replace(u'_', u' ') + u' ' + words.join(QStringLiteral(", "));
}

QString refusals_beside(const Kind& kind, const Refusals& refusals) {
    QStringList lines;
    for (const Refusal& refusal : refusals) {
        QString line = QString::fromStdString(refusal.what);
        if (!refusal.mend.empty()) line += QStringLiteral("; ") + QString::fromStdString(refusal.mend);
        for (const Field& field : kind.fields) {
            const QString name = QString::fromStdString(field.name);
            if (name.contains(u'_')) line.replace(name, field_title(field).toLower());
        }
        lines << line;
    }
    return lines.join(u'\n');
}

}  // namespace spoilbook::form
