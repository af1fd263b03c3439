// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/record_sheet.h"

#include <QVBoxLayout>

#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/record_words.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_typed.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

// A list as long as this is typed, not chosen from.
constexpr std::size_t most_choices = 60;

}  // namespace

RecordSheet::RecordSheet(BookSession& session, const Kind& kind, const Id& id, QWidget* parent)
    : QWidget(parent),
      session_(session),
      kind_(kind),
      row_(session.book().row(kind, id)),
      why_(new TextField(tr("Reason, for a change of something signed"), {}, this)) {
    build();
}

RecordSheet::RecordSheet(BookSession& session, const Kind& kind, std::string new_label, QWidget* parent)
    : QWidget(parent),
      session_(session),
      kind_(kind),
      new_label_(std::move(new_label)),
      why_(new TextField(tr("Reason, for a change of something signed"), {}, this)) {
    build();
}

void RecordSheet::build() {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(2 * grid);
    if (!session_.writable()) {
        QLabel* note = make_quiet(tr("Reading only: %1").arg(session_.why_not_writable()), Step::body, this);
        note->setWordWrap(true);
        all->addWidget(note);
    }
    for (std::size_t i = 0; i < kind_.fields.size(); ++i)
        all->addWidget(make_field(i));
    why_->set_hint(tr("The old value stays in the book beside the new one."));
    why_->setVisible(session_.writable());
    all->addWidget(why_);
    all->addStretch();
}

QWidget* RecordSheet::make_field(std::size_t index) {
    const Field& field = kind_.fields[index];
    const Value value = row_ ? row_->values[index] : Value();
    const bool is_label = !kind_.label.empty() && field.name == kind_.label.front();
    const bool listed = field.type == FieldType::reference &&
                        session_.book().rows(spoilbook::kind(field.refers_to)).size() <= most_choices;
    if (session_.writable() && (field.type == FieldType::choice || listed)) return make_choice(field, value);

    auto* edit = new TextField(field_title(field), QString::fromStdString(field.unit), this);
    edit->set_hint(QString::fromStdString(field.doc));
    edit->set_text(is_label && !row_ ? QString::fromStdString(new_label_)
                                     : value_copied(asking(session_.book()), field, value, session_.zone()));
    const bool fixed = is_label && (kind_.label_required || !row_ || !is_blank(value));
    edit->set_read_only(fixed || !session_.writable());
    connect(edit, &TextField::committed, this, [this, edit, &field](const QString& text) {
        const QString problem = put(field, text);
        edit->show_problem(problem);
        if (!problem.isEmpty() || !row_) return;
        const auto at = kind_.index_of(field.name);
        edit->set_text(value_copied(asking(session_.book()), field, row_->values[*at], session_.zone()));
    });
    return edit;
}

QWidget* RecordSheet::make_choice(const Field& field, const Value& value) {
    auto* choice = new ChoiceField(field_title(field), this);
    choice->set_hint(QString::fromStdString(field.doc));
    std::vector<Choice> choices{{QString(), tr("not recorded")}};
    for (const std::string& word : field.choices) {
        const QString key = QString::fromStdString(word);
        choices.push_back({key, QString(key).replace(u'_', u' ')});
    }
    if (field.type == FieldType::reference) {
        const Kind& other = spoilbook::kind(field.refers_to);
        for (const Row& one : session_.book().rows(other)) {
            const QString key = QString::fromStdString(session_.book().label_of(other, one.id));
            choices.push_back({key, key});
        }
    }
    choice->set_choices(choices);
    const QString held = value_copied(asking(session_.book()), field, value, session_.zone());
    if (!held.isEmpty()) choice->set_chosen(held);
    connect(choice, &ChoiceField::committed, this,
            [this, choice, &field](const QString& key) { choice->show_problem(put(field, key)); });
    return choice;
}

// Times as on a sheet and numbers as in the reader's language; the model reads the rest, and refuses.
std::string RecordSheet::typed(const Field& field, const QString& text) const {
    if (field.type == FieldType::instant) {
        const TimeReading reading = time_typed(text, {session_.zone(), session_.now(), {}});
        if (reading.at) return instant_text(*reading.at, session_.zone());
    }
    if (field.axis) {
        const auto degrees = degrees_typed(text, *field.axis, locale());
        if (degrees) return number_text(*degrees);
    } else if (field.type == FieldType::number) {
        const auto number = number_typed(text, locale());
        if (number) return number_text(*number);
    }
    return text.toStdString();
}

QString RecordSheet::named() const {
    return row_ ? record_title(session_.book(), kind_, *row_, session_.zone())
                : QString::fromStdString(kind_.name + " " + new_label_).replace(u'_', u' ');
}

Checked<Done> RecordSheet::write(Book& book, const Act& by, const FieldInput& input) {
    const auto outcome = row_ ? change_record(book, by, kind_, row_->id, {input})
                              : log_record(book, by, kind_, new_label_, {input});
    if (!outcome) return outcome.refusals();
    row_ = book.row(kind_, outcome->id);
    return Done{};
}

QString RecordSheet::put(const Field& field, const QString& text) {
    const FieldInput input{field.name, typed(field, text)};
    const QString what = tr("%1, %2").arg(named(), field_title(field));
    return refusals_beside(kind_, session_.write(what, EntryKind::change, why_->text(),
                                                 [&](Book& book, const Act& by) -> Checked<Done> {
                                                     return write(book, by, input);
                                                 }));
}

}  // namespace spoilbook::form
