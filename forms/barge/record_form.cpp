// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/record_form.h"

#include <algorithm>

#include "forms/barge/choices.h"
#include "forms/barge/desk_words.h"
#include "forms/barge/draughts_field.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "forms/shared/unit_field.h"
#include "model/answer/time_order.h"
#include "model/record/field_text.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

int decimals_of(const Field& field) {
    if (field.unit == "°" && field.bounded && field.high <= 180) return 6;
    if (field.name == "easting_m" || field.name == "northing_m" || field.name == "heading_deg") return 1;
    if (field.unit == "t/m³") return 4;
    return field.unit == "m" ? 2 : 0;
}

QString text_of(const BookSession& session, const Field& field, const Value& value) {
    if (is_blank(value)) return {};
    if (field.type == FieldType::reference)
        return QString::fromStdString(session.book().label_of(kind(field.refers_to), std::get<Id>(value)));
    return QString::fromStdString(field_text(field, value, session.zone()));
}

// A refusal beside its box: the box says where, and its name in the book is not for the reader.
QString beside(const Field& field, const Refusals& refusals) {
    QStringList lines;
    for (const Refusal& refusal : refusals) {
        const bool is_own = refusal.code == "out-of-range" || refusal.code == "not-a-number" ||
                            refusal.code == "end-before-start";
        if (!is_own) {
            lines << refusals_shown({refusal});
            continue;
        }
        QString what = QString::fromStdString(refusal.what);
        what.remove(QStringLiteral(" of ") + QString::fromStdString(field.name));
        lines << RecordForm::tr("%1; %2.").arg(what, QString::fromStdString(refusal.mend));
        const bool metres = refusal.code == "out-of-range" && field.unit == "m";
        if (metres) lines.back() += u' ' + RecordForm::tr("Typed in centimetres?");
    }
    return lines.join(u'\n');
}

// The record stands as it was written: what is wrong may be the other time.
QString order_words(const TimeFinding& finding, const Kind& kind, const std::string& label,
                    const Zone& zone) {
    const auto index = finding.other_kind->index_of(finding.other_column);
    const QString step = column_words(*finding.other_kind, finding.other_kind->fields[*index]);
    const bool is_own = finding.other_kind == &kind && finding.other == label;
    const QString other =
        is_own ? step
               : RecordForm::tr("%1 of %2 %3")
                     .arg(step, kind_words(*finding.other_kind), QString::fromStdString(finding.other));
    const QString at = zone.day_of(finding.at) == zone.day_of(finding.other_at)
                           ? time_shown(finding.other_at, zone)
                           : day_and_time_shown(finding.other_at, zone);
    return (finding.early ? RecordForm::tr("Kept, but it is before “%1”, %2. Mend the one that is wrong.")
                          : RecordForm::tr("Kept, but it is after “%1”, %2. Mend the one that is wrong."))
        .arg(other, at);
}

}  // namespace

RecordForm::RecordForm(BookSession& session, const Kind& kind, QObject* parent)
    : QObject(parent), session_(session), kind_(kind) {
    connect(&session_, &Session::changed, this, &RecordForm::refresh);
}

FieldBox* RecordForm::add(const std::string& column, QWidget* parent, const QString& title) {
    bounds_.push_back(std::make_unique<Bound>());
    Bound& bound = *bounds_.back();
    bound.index = kind_.index_of(column).value();
    bound.field = &kind_.fields[bound.index];
    const QString name = title.isEmpty() ? column_words(kind_, *bound.field) : title;
    switch (bound.field->type) {
        case FieldType::number:
        case FieldType::integer:
            bound.box = add_number(bound, name, parent);
            break;
        case FieldType::instant:
            bound.box = add_time(bound, name, parent);
            break;
        case FieldType::choice:
            bound.box = add_choice(bound, name, parent);
            break;
        case FieldType::reference:
            bound.box = chosen_from_list(*bound.field) ? add_choice(bound, name, parent)
                                                       : add_text(bound, name, parent);
            break;
        default:
            // A list that must have six numbers, or four, is a reading of draught marks.
            bound.box =
                bound.field->allowed.empty() ? add_text(bound, name, parent) : add_marks(bound, name, parent);
    }
    bound.box->setEnabled(false);
    connect(bound.box, &FieldBox::edited, this, &RecordForm::edited);
    return bound.box;
}

FieldBox* RecordForm::add_number(Bound& bound, const QString& title, QWidget* parent) {
    const Field& field = *bound.field;
    UnitRule rule{QString::fromStdString(field.unit == "buckets" ? "" : field.unit), field.low, field.high,
                  decimals_of(field)};
    rule.axis = field.axis;
    rule.odd = [&bound](double value) { return bound.odd ? bound.odd(value) : QString(); };
    auto* box = new UnitField(title, rule, parent);
    bound.show = [box](const Value& value) {
        const double* number = std::get_if<double>(&value);
        box->set_value(number ? std::optional(*number) : std::nullopt);
    };
    bound.typed = [box] {
        const auto number = box->typed();
        return number ? number_text(*number) : box->text().toStdString();
    };
    connect(box, &UnitField::committed, this, [this, &bound](std::optional<double> value) {
        put(bound, value ? number_text(*value) : std::string());
    });
    return box;
}

FieldBox* RecordForm::add_time(Bound& bound, const QString& title, QWidget* parent) {
    auto* box = new TimeField(
        title, [this, &bound] { return context(bound); }, parent);
    bound.show = [box](const Value& value) {
        const std::int64_t* at = std::get_if<std::int64_t>(&value);
        box->set_value(at ? std::optional(Instant{*at}) : std::nullopt);
    };
    connect(box, &TimeField::committed, this, [this, &bound](std::optional<Instant> at) {
        put(bound, at ? instant_text(*at, session_.zone()) : std::string());
    });
    return box;
}

FieldBox* RecordForm::add_choice(Bound& bound, const QString& title, QWidget* parent) {
    auto* box = new ChoiceField(title, parent);
    bound.show = [this, box, &bound](const Value& value) {
        box->set_choices(choices_for(session_.season(), session_.book(), kind_, *bound.field, label_));
        const QString held = text_of(session_, *bound.field, value);
        box->set_chosen(held.isEmpty() ? std::nullopt : std::optional(held));
    };
    connect(box, &ChoiceField::committed, this,
            [this, &bound](const QString& key) { put(bound, key.toStdString()); });
    return box;
}

FieldBox* RecordForm::add_text(Bound& bound, const QString& title, QWidget* parent) {
    const Field& field = *bound.field;
    auto* box = new TextField(title, QString::fromStdString(field.unit), parent);
    bound.show = [this, box, &bound](const Value& value) {
        box->set_text(text_of(session_, *bound.field, value));
    };
    bound.typed = [box] { return box->text().toStdString(); };
    connect(box, &TextField::committed, this,
            [this, &bound](const QString& text) { put(bound, text.toStdString()); });
    return box;
}

FieldBox* RecordForm::add_marks(Bound& bound, const QString& title, QWidget* parent) {
    auto* box = new DraughtsField(title, bound.field->high, parent);
    bound.show = [box](const Value& value) {
        std::vector<double> marks_m;
        read_value(value, marks_m);
        box->set_marks(marks_m);
    };
    bound.typed = [box] {
        const auto marks_m = box->typed_marks();
        return marks_m ? numbers_text(*marks_m) : std::string("?");
    };
    connect(box, &DraughtsField::committed, this,
            [this, &bound](const std::vector<double>& marks_m) { put(bound, numbers_text(marks_m)); });
    return box;
}

std::optional<Row> RecordForm::typed_row() const {
    auto row = label_.empty() ? std::nullopt : session_.book().labelled(kind_, label_);
    if (!row) return row;
    for (const auto& bound : bounds_) {
        if (!bound->typed || bound->field->type == FieldType::reference) continue;
        const auto value = parse_field(*bound->field, bound->typed(), session_.zone());
        if (value) row->values[bound->index] = *value;
    }
    return row;
}

void RecordForm::show(const std::string& label) {
    const bool other = label != label_;
    label_ = label;
    if (other) refused_.clear();
    show_row(other);
}

void RecordForm::refresh() {
    show_row(false);
}

// A box whose value the book still holds is left alone: the person may be writing in it.
void RecordForm::show_row(bool all) {
    const auto row = label_.empty() ? std::nullopt : session_.book().labelled(kind_, label_);
    for (const auto& bound : bounds_) {
        bound->box->setEnabled(row.has_value() && session_.writable());
        const Value value = row ? row->values[bound->index] : Value();
        // Cells are those of the ground, which may have changed beside them.
        const bool list_changed = !bound->field->within.empty() && bound->box->problem().isEmpty();
        if (!all && value == bound->shown && !list_changed) continue;
        bound->shown = value;
        bound->show(value);
    }
    for (const auto& bound : bounds_)
        shorten(*bound);
    show_order();
    emit shown();
}

void RecordForm::show_order() {
    const bool has_times = std::any_of(bounds_.begin(), bounds_.end(), [](const auto& bound) {
        return bound->field->type == FieldType::instant;
    });
    if (!has_times) return;
    const auto row = label_.empty() ? std::nullopt : session_.book().labelled(kind_, label_);
    std::map<std::string, QString> now;
    if (row) {
        for (const TimeFinding& finding : time_findings(session_.season(), kind_, row->id))
            now.try_emplace(finding.column, order_words(finding, kind_, label_, session_.zone()));
    }
    for (const auto& bound : bounds_) {
        if (bound->field->type != FieldType::instant) continue;
        const std::string& column = bound->field->name;
        const QString& before = bound->box->problem();
        if ((before.isEmpty() || before == out_of_order_[column]) && before != now[column])
            bound->box->show_problem(now[column]);
    }
    out_of_order_ = std::move(now);
}

void RecordForm::shorten(const Bound& bound) const {
    auto* time = qobject_cast<TimeField*>(bound.box);
    if (!time || !short_times_) return;
    const Zone zone = session_.zone();
    const Day usual = zone.day_of(after_.value_or(session_.now()));
    const bool other_day = time->value() && zone.day_of(*time->value()) != usual;
    time->set_hint(other_day ? QString::fromStdString(day_text(zone.day_of(*time->value()))) : QString());
}

FieldBox* RecordForm::box(const std::string& column) const {
    for (const auto& bound : bounds_) {
        if (bound->field->name == column) return bound->box;
    }
    return nullptr;
}

void RecordForm::set_odd(const std::string& column, std::function<QString(double)> odd) {
    for (const auto& bound : bounds_) {
        if (bound->field->name == column) bound->odd = odd;
    }
}

void RecordForm::put(const Bound& bound, const std::string& text) {
    if (label_.empty()) return;
    const QString what =
        tr("%1 %2, %3").arg(kind_words(kind_), QString::fromStdString(label_), bound.box->label());
    const QString why = reason_ ? reason_() : QString();
    const Refusals refusals = session_.log(what, kind_, label_, {{bound.field->name, text}}, why);
    if (refusals.empty()) {
        refused_.erase(bound.field->name);
        bound.box->show_problem({});
        shorten(bound);
        show_order();
        emit written();
        return;
    }
    shorten(bound);
    refused_[bound.field->name] = text;
    bound.box->show_problem(beside(*bound.field, refusals));
}

void RecordForm::try_again() {
    const auto refused = refused_;
    for (const auto& [column, text] : refused) {
        for (const auto& bound : bounds_) {
            if (bound->field->name == column) put(*bound, text);
        }
    }
}

TimeContext RecordForm::context(const Bound& bound) const {
    const auto own = after_of_.find(bound.field->name);
    return {session_.zone(), session_.now(), own != after_of_.end() && own->second ? own->second : after_};
}

}  // namespace spoilbook::form
