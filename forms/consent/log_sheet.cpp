// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/log_sheet.h"

#include <QVBoxLayout>
#include <cmath>

#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/record_words.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "forms/shared/type_scale.h"
#include "forms/shared/unit_field.h"
#include "model/record/field_text.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {

LogSheet::LogSheet(BookSession& session, const Kind& kind, std::string prefix, std::vector<FieldInput> fixed,
                   std::vector<LogColumn> columns, QWidget* parent)
    : QWidget(parent),
      session_(session),
      kind_(kind),
      prefix_(std::move(prefix)),
      fixed_(std::move(fixed)),
      all_(new QVBoxLayout(this)),
      words_(make_label({}, Step::body, Weight::regular, this)),
      problem_(make_label({}, Step::body, Weight::semibold, this)) {
    all_->setSpacing(grid + half_grid);
    for (QLabel* label : {words_, problem_}) {
        label->setWordWrap(true);
        label->hide();
    }
    all_->addWidget(words_);
    for (const LogColumn& column : columns) {
        asked_.push_back(ask(column));
        all_->addWidget(asked_.back().box);
    }
    all_->addWidget(problem_);
    auto* press = make_button(ButtonKind::primary, tr("Write it down"), QStringLiteral("check"), this);
    press->setEnabled(session.writable());
    if (!session.writable()) press->setToolTip(session.why_not_writable());
    connect(press, &QPushButton::clicked, this, &LogSheet::write);
    all_->addWidget(press, 0, Qt::AlignLeft);
    all_->addStretch();
}

void LogSheet::explain(const QString& words) {
    words_->setText(words);
    words_->show();
}

LogSheet::Asked LogSheet::ask(const LogColumn& column) {
    Asked asked{column, nullptr, {}};
    const Field& field = kind_.field(column.name);
    if (field.type == FieldType::number)
        ask_number(asked, field);
    else if (field.type == FieldType::instant && !field.day_allowed)
        ask_time(asked);
    else if (field.type == FieldType::choice || field.type == FieldType::reference)
        ask_choice(asked, field);
    else
        ask_text(asked, field);
    if (!column.hint.isEmpty()) asked.box->set_hint(column.hint);
    return asked;
}

void LogSheet::ask_number(Asked& asked, const Field& field) {
    const auto* offered = asked.column.offered ? std::get_if<double>(&*asked.column.offered) : nullptr;
    const bool whole = offered != nullptr && *offered == std::round(*offered);
    auto* box = new UnitField(
        asked.column.title, {QString::fromStdString(field.unit), field.low, field.high, whole ? 0 : 2}, this);
    if (offered != nullptr) box->offer(*offered, asked.column.offered_why);
    // What does not read goes on as typed: the model refuses it in its own words.
    asked.text = [box] {
        if (!box->problem().isEmpty()) return box->text().toStdString();
        return box->value() ? number_text(*box->value()) : std::string();
    };
    asked.box = box;
}

void LogSheet::ask_time(Asked& asked) {
    auto* box = new TimeField(
        asked.column.title,
        [this] {
            return TimeContext{session_.zone(), session_.now(), {}};
        },
        this);
    const auto* offered = asked.column.offered ? std::get_if<std::int64_t>(&*asked.column.offered) : nullptr;
    if (offered != nullptr) box->offer(Instant{*offered}, asked.column.offered_why);
    asked.text = [this, box] {
        if (box->value()) return instant_text(*box->value(), session_.zone());
        return box->text().toStdString();
    };
    asked.box = box;
}

void LogSheet::ask_choice(Asked& asked, const Field& field) {
    auto* box = new ChoiceField(asked.column.title, this);
    std::vector<Choice> choices;
    for (const std::string& word : field.choices)
        choices.push_back({QString::fromStdString(word), QString::fromStdString(word)});
    if (field.type == FieldType::reference) {
        const Kind& other = spoilbook::kind(field.refers_to);
        for (const Row& row : session_.book().rows(other)) {
            const QString label = QString::fromStdString(session_.book().label_of(other, row.id));
            choices.push_back({label, label});
        }
    }
    box->set_choices(choices);
    const auto* offered = asked.column.offered ? std::get_if<std::string>(&*asked.column.offered) : nullptr;
    if (offered != nullptr) box->offer(QString::fromStdString(*offered), asked.column.offered_why);
    asked.text = [box] { return box->chosen().value_or(QString()).toStdString(); };
    asked.box = box;
}

void LogSheet::ask_text(Asked& asked, const Field& field) {
    auto* box = new TextField(asked.column.title, QString::fromStdString(field.unit), this);
    const auto* offered = asked.column.offered ? std::get_if<std::string>(&*asked.column.offered) : nullptr;
    if (offered != nullptr && !offered->empty())
        box->offer(QString::fromStdString(*offered), asked.column.offered_why);
    asked.text = [box] { return box->text().simplified().toStdString(); };
    asked.box = box;
}

void LogSheet::write() {
    std::vector<FieldInput> inputs = fixed_;
    bool whole = true;
    for (const Asked& asked : asked_) {
        const std::string text = asked.text();
        const bool lacks = text.empty() && !asked.column.needed.isEmpty();
        if (lacks || asked.box->problem() == asked.column.needed)
            asked.box->show_problem(lacks ? asked.column.needed : QString());
        whole = whole && asked.box->problem().isEmpty();
        if (!text.empty()) inputs.push_back({asked.column.name, text});
    }
    if (!whole) return;
    const std::string label = next_label(session_.book(), kind_, prefix_);
    const Refusals refusals = session_.log(
        QString::fromStdString(kind_.name + " " + label).replace(u'_', u' '), kind_, label, inputs);
    problem_->setText(refusals_beside(kind_, refusals));
    problem_->setVisible(!refusals.empty());
    if (refusals.empty()) emit written(QString::fromStdString(label));
}

}  // namespace spoilbook::form
