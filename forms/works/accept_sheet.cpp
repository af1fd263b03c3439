// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/accept_sheet.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/table_view.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "forms/works/say.h"
#include "model/logging/accept_proposal.h"

namespace spoilbook::form {
namespace {

QString three(std::optional<double> value, QString (*text)(double, int, const QLocale&) = &number_shown) {
    return value ? text(*value, 3, QLocale()) : AcceptSheet::tr("none");
}

}  // namespace

AcceptSheet::AcceptSheet(BookSession& session, ProposalRow proposal, QWidget* parent)
    : QWidget(parent), session_(session), proposal_(std::move(proposal)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    auto* what =
        make_label(tr("Bulking factor of %1: from %2 ± %3 to %4 ± %5.")
                       .arg(proposal_.material, three(proposal_.prior), three(proposal_.prior_u, &rounded_up),
                            three(proposal_.fit), three(proposal_.fit_u, &rounded_up)),
                   Step::strong, Weight::semibold, this);
    what->setWordWrap(true);
    all->addWidget(what);
    build_fields();
    effect_of_ = make_quiet({}, Step::body, this);
    effect_of_->setWordWrap(true);
    all->addWidget(effect_of_);
    table_ = new TableView(tr("effect on every limit"), this);
    effects_ = new RowTable<EffectRow>(effect_columns(QLocale()), table_);
    table_->set_model(effects_);
    table_->set_empty_text(tr("Working out the effect …"));
    table_->setMinimumHeight(22 * grid);
    all->addWidget(table_, 1);
    auto* note =
        make_quiet(tr("Returns that were made keep the factor that they were made with; the next one "
                      "states the revision. Until the authority has accepted it, each limit is judged "
                      "by the stricter reading. The consent's own text prevails."),
                   Step::small, this);
    note->setWordWrap(true);
    all->addWidget(note);
    problem_ = make_label({}, Step::body, Weight::semibold, this);
    problem_->setWordWrap(true);
    problem_->hide();
    all->addWidget(problem_);
    accept_ = make_button(ButtonKind::primary, tr("Accept and write it down"), QStringLiteral("sign"), this);
    accept_->setEnabled(session.writable() && proposal_.fit.has_value());
    all->addWidget(accept_, 0, Qt::AlignLeft);
    connect(accept_, &QPushButton::clicked, this, &AcceptSheet::accept);
}

void AcceptSheet::build_fields() {
    auto* boxes = new QGridLayout;
    boxes->setHorizontalSpacing(2 * grid);
    from_ = new TimeField(
        tr("In force from"),
        [this] {
            return TimeContext{session_.zone(), session_.now(), {}};
        },
        this);
    if (proposal_.from) {
        const QString day = day_shown(session_.zone().day_of(*proposal_.from), QLocale());
        from_->offer(*proposal_.from, tr("%1, the first survey that it rests on").arg(day));
    }
    by_ = new TextField(tr("Decided by"), {}, this);
    if (!session_.person().isEmpty()) by_->offer(session_.person(), tr("who writes"));
    why_ = new TextField(tr("Why"), {}, this);
    QString rests = proposal_.evidence;
    why_->offer(tr("barges against the bed, %1").arg(rests.replace(u';', QStringLiteral(", "))),
                tr("the evidence"));
    boxes->addWidget(from_, 0, 0, Qt::AlignTop);
    boxes->addWidget(by_, 0, 1, Qt::AlignTop);
    boxes->addWidget(why_, 1, 0, 1, 2, Qt::AlignTop);
    qobject_cast<QVBoxLayout*>(layout())->addLayout(boxes);
    connect(from_, &TimeField::committed, this, &AcceptSheet::effects_asked);
}

Instant AcceptSheet::shown_from() const {
    if (from_->value()) return *from_->value();
    return proposal_.from.value_or(session_.figures_at());
}

FactorToBe AcceptSheet::factor_to_be() const {
    return {proposal_.material.toStdString(), proposal_.fit.value_or(1), proposal_.fit_u.value_or(0),
            shown_from()};
}

void AcceptSheet::show_effects(std::vector<EffectRow> effects) {
    effect_of_->setText(tr("Effect on every limit, were it in force from %1:")
                            .arg(moment_shown(shown_from(), session_.zone(), QLocale())));
    effects_->set_rows(std::move(effects));
    table_->set_empty_text(tr("No condition of this book is a limit on a quantity."));
    table_->table()->resizeColumnsToContents();
}

void AcceptSheet::accept() {
    from_->show_problem(from_->value() ? QString() : tr("From when it counts must be said."));
    by_->show_problem(by_->text().isEmpty() ? tr("Who decided must be said.") : QString());
    why_->show_problem(why_->text().isEmpty() ? tr("Why must be said.") : QString());
    if (!from_->value() || by_->text().isEmpty() || why_->text().isEmpty()) return;
    const FactorToBe factor = factor_to_be();
    AcceptedProposal accepted{factor.material, factor.from, factor.value, factor.u, {}};
    for (const QString& label : proposal_.evidence.split(u';', Qt::SkipEmptyParts))
        accepted.evidence.push_back(label.trimmed().toStdString());
    const Refusals refusals =
        session_.write(tr("bulking factor of %1 revised").arg(proposal_.material), EntryKind::change,
                       why_->text(), [&](Book& book, const Act& writing) -> Checked<Done> {
                           Act act = writing;
                           act.who = by_->text().simplified().toStdString();
                           const auto logged = accept_proposal(book, act, accepted);
                           if (!logged) return logged.refusals();
                           return Done{};
                       });
    problem_->setText(refusals_shown(refusals));
    problem_->setVisible(!refusals.empty());
    if (refusals.empty()) emit written();
}

}  // namespace spoilbook::form
