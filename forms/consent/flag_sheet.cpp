// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/flag_sheet.h"

#include <QVBoxLayout>

#include "forms/consent/turbidity_rows.h"
#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "forms/shared/type_scale.h"
#include "model/record/watched_water.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {

FlagSheet::FlagSheet(BookSession& session, const QString& site, Instant first, Instant last, int count,
                     QWidget* parent)
    : QWidget(parent), session_(session), site_(site) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    auto* what = make_label(
        tr("Readings of %1 chosen: %2. All readings of the site between the two times get the flag; "
           "their values, and what the checks said of them, stay.")
            .arg(site)
            .arg(count),
        Step::body, Weight::regular, this);
    what->setWordWrap(true);
    all->addWidget(what);
    const auto context = [this] { return TimeContext{session_.zone(), session_.now(), {}}; };
    from_ = new TimeField(tr("First reading"), context, this);
    from_->set_value(first);
    to_ = new TimeField(tr("Last reading"), context, this);
    to_->set_value(last);
    flag_ = new ChoiceField(tr("Flag"), this);
    std::vector<Choice> flags;
    for (const Flag flag : {Flag::pass, Flag::not_evaluated, Flag::suspect, Flag::fail})
        flags.push_back(
            {QString::number(int(flag)), QStringLiteral("%1 · %2").arg(int(flag)).arg(flag_word(flag))});
    flag_->set_choices(flags);
    why_ = new TextField(tr("Why"), {}, this);
    for (QWidget* field : std::initializer_list<QWidget*>{from_, to_, flag_, why_})
        all->addWidget(field);
    problem_ = make_label({}, Step::body, Weight::semibold, this);
    problem_->setWordWrap(true);
    problem_->hide();
    all->addWidget(problem_);
    auto* press = make_button(ButtonKind::primary, tr("Set the flag"), QStringLiteral("sign"), this);
    press->setEnabled(session.writable());
    if (!session.writable()) press->setToolTip(session.why_not_writable());
    connect(press, &QPushButton::clicked, this, &FlagSheet::write);
    all->addWidget(press, 0, Qt::AlignLeft);
    all->addStretch();
}

void FlagSheet::write() {
    from_->show_problem(from_->value() ? QString() : tr("The first reading's time must be said."));
    flag_->show_problem(flag_->chosen() ? QString() : tr("A flag must be chosen."));
    why_->show_problem(why_->text().isEmpty() ? tr("Why must be said.") : QString());
    if (!from_->value() || !flag_->chosen() || why_->text().isEmpty()) return;
    const Zone zone = session_.zone();
    std::vector<FieldInput> inputs{{"site", site_.toStdString()},
                                   {"from", instant_text(*from_->value(), zone)},
                                   {"flag", flag_->chosen()->toStdString()},
                                   {"why", why_->text().toStdString()},
                                   {"by", session_.person().toStdString()}};
    if (to_->value()) inputs.push_back({"to", instant_text(*to_->value(), zone)});
    const Kind& kind = definition<Overrule>().kind();
    const Refusals refusals = session_.log(tr("flag of readings at %1").arg(site_), kind,
                                           next_label(session_.book(), kind, "V-"), inputs);
    problem_->setText(refusals_shown(refusals));
    problem_->setVisible(!refusals.empty());
    if (refusals.empty()) emit written();
}

}  // namespace spoilbook::form
