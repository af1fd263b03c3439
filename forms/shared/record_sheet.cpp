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

RecordSheet::RecordSheet(BookSession& session, const Kind& kind, std::string label, QWidget* parent)
    : QWidget(parent),
      session_(session),
      kind_(kind),
      label_(std::move(label)),
      row_(row()),
      why_(new TextField(tr("Reason, for a change of something signed"), {}, this)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(2 * grid);
    if (!session.writable()) {
        QLabel* note = make_quiet(tr("Reading only: %1").arg(session.why_not_writable()), Step::body, this);
        note->setWordWrap(true);
        all->addWidget(note);
    }
    for (std::size_t i = 0; i < kind.fields.size(); ++i)
        all->addWidget(make_field(i));
    why_->set_hint(tr("The old value stays in the book beside the new one."));
    why_->setVisible(session.writable());
    all->addWidget(why_);
    all->addStretch();
}

std::optional<Row> RecordSheet::row() const {
    return session_.book().labelled(kind_, label_);
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
    edit->set_text(is_label ? QString::fromStdString(label_)
                            : value_copied(asking(session_.book()), field, value, session_.zone()));
    edit->set_read_only(is_label || !session_.writable());
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
    if (field.type == FieldType::number) {
        const auto number = number_typed(text, locale());
        if (number) return number_text(*number);
    }
    return text.toStdString();
}

QString RecordSheet::put(const Field& field, const QString& text) {
    std::vector<FieldInput> inputs{{field.name, typed(field, text)}};
    if (kind_.label.size() > 1 && row_) {
        // Labels that are unique only in their parent need it beside them.
        const Field& parent = kind_.field(kind_.label[1]);
        const auto at = kind_.index_of(parent.name);
        const QString named =
            value_copied(asking(session_.book()), parent, row_->values[*at], session_.zone());
        if (parent.name != field.name) inputs.push_back({parent.name, named.toStdString()});
    }
    const QString what =
        tr("%1 %2, %3")
            .arg(QString::fromStdString(kind_.name), QString::fromStdString(label_), field_title(field));
    const Refusals refusals = session_.log(what, kind_, label_, inputs, why_->text());
    if (!refusals.empty()) return refusals_shown(refusals);
    row_ = row();
    return {};
}

}  // namespace spoilbook::form
