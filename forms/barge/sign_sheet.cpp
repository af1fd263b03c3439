// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/sign_sheet.h"

#include <QVBoxLayout>

#include "forms/barge/press_button.h"
#include "forms/barge/record_form.h"
#include "forms/barge/shift_reading.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"

namespace spoilbook::form {

SignSheet::SignSheet(ShiftHand& hand, std::string shift, QWidget* parent)
    : QWidget(parent),
      hand_(hand),
      label_(std::move(shift)),
      form_(new RecordForm(hand.session(), kind("shift"), this)),
      end_(new PressButton(tr("It ends now"), QStringLiteral("clock"), Qt::Key_F11, this)),
      name_(new ChoiceField(tr("Name of who signs"), this)),
      sign_(new PressButton(tr("Sign the shift sheet"), QStringLiteral("sign"), Qt::Key_F12, this)) {
    auto* all = new QVBoxLayout(this);
    auto* head = new QHBoxLayout;
    head->addWidget(form_->add("end", this), 1, Qt::AlignTop);
    head->addWidget(end_, 1, Qt::AlignVCenter);
    all->addLayout(head);
    auto* reading = new ShiftReading(hand.session(), label_, this);
    all->addWidget(reading, 1);
    auto* foot = new QHBoxLayout;
    foot->addWidget(name_, 1, Qt::AlignTop);
    foot->addWidget(sign_, 1, Qt::AlignVCenter);
    all->addLayout(foot);
    QLabel* note = make_quiet(
        tr("Signed by name on this device: it says who answers for the sheet, it is no proof against a "
           "person who "
           "holds the device. From then on the sheet changes only by a correction that keeps the old value."),
        Step::small, this);
    note->setWordWrap(true);
    all->addWidget(note);
    connect(reading, &ShiftReading::line_opened, this, &SignSheet::line_opened);
    connect(end_, &QPushButton::clicked, this, [this] { hand_.end_shift(); });
    connect(sign_, &QPushButton::clicked, this, &SignSheet::sign);
    connect(&hand.session(), &Session::changed, this, &SignSheet::refresh);
    std::vector<Choice> people;
    for (const Writer& writer : hand.session().people())
        people.push_back({writer.name, tr("%1, %2").arg(writer.name, writer.role)});
    name_->set_choices(people);
    refresh();
}

const Shift* SignSheet::shift() const {
    for (const Shift& one : hand_.season().shifts.rows()) {
        if (one.shift == label_) return &one;
    }
    return nullptr;
}

void SignSheet::refresh() {
    const Shift* one = shift();
    if (!one) return;
    form_->set_after(one->start);
    form_->show(label_);
    end_->setVisible(!one->end);
    end_->set_due(!one->end);
    sign_->setEnabled(one->end && !one->signed_at && hand_.session().writable());
    sign_->set_due(sign_->isEnabled());
    sign_->set_note(one->signed_at ? tr("signed by %1").arg(QString::fromStdString(one->signed_by))
                    : one->end     ? QString()
                                   : tr("when it has ended"));
    if (!name_->chosen()) name_->offer(QString::fromStdString(one->skipper), tr("the skipper"));
}

void SignSheet::sign() {
    const Shift* one = shift();
    if (!one) return;
    if (name_->chosen().value_or(QString()).isEmpty()) return name_->show_problem(tr("Choose who signs."));
    const QString problem = hand_.sign(*one, *name_->chosen());
    name_->show_problem(problem);
    if (problem.isEmpty()) emit signed_now();
}

}  // namespace spoilbook::form
