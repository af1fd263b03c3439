// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/person_sheet.h"

#include <QLineEdit>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"

namespace spoilbook::form {
namespace {

QLineEdit* labelled_edit(const QString& name, QWidget* parent, QVBoxLayout* all) {
    auto* edit = new QLineEdit(parent);
    edit->setAccessibleName(name);
    QLabel* label = make_quiet(name, Step::small, parent);
    label->setBuddy(edit);
    label->setIndent(3);
    all->addWidget(label);
    all->addWidget(edit);
    return edit;
}

}  // namespace

PersonSheet::PersonSheet(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), name_(new ChoiceField(tr("Name"), this)) {
    auto* all = new QVBoxLayout(this);
    QLabel* why =
        make_quiet(tr("Every entry in the book carries the name of who wrote it."), Step::body, this);
    why->setWordWrap(true);
    all->addWidget(why);
    std::vector<Choice> choices;
    for (const Writer& person : session.people()) {
        choices.push_back({person.name, tr("%1, %2").arg(person.name, person.role)});
    }
    name_->set_choices(choices);
    if (!session.person().isEmpty()) name_->set_chosen(session.person());
    name_->show_problem({});
    all->addWidget(name_);
    all->addSpacing(2 * grid);
    relief_ = labelled_edit(tr("Or a relief's name, as it would stand on the sheet"), this, all);
    all->addStretch();
    QPushButton* take_it =
        make_button(ButtonKind::primary, tr("Write under this name"), QStringLiteral("sign"), this);
    all->addWidget(take_it);
    connect(take_it, &QPushButton::clicked, this, &PersonSheet::take);
    connect(relief_, &QLineEdit::returnPressed, this, &PersonSheet::take);
}

void PersonSheet::take() {
    const QString relief = relief_->text().simplified();
    const QString name = relief.isEmpty() ? name_->chosen().value_or(QString()) : relief;
    if (name.isEmpty())
        return name_->show_problem(tr("No name is chosen. Choose one, or type a relief's below."));
    const QString problem = session_.set_person(name);
    if (!problem.isEmpty()) return name_->show_problem(problem);
    emit done();
}

}  // namespace spoilbook::form
