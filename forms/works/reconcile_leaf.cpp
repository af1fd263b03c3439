// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/reconcile_leaf.h"

#include <QBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/accept_sheet.h"

namespace spoilbook::form {
namespace {

constexpr int reconcile_abreast_from = 96 * grid;

}  // namespace

ReconcileLeaf::ReconcileLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      plot_(new BedPlot(tr("Barges against the bed"), this)),
      proposals_(new TableView(tr("bulking factors"), this)),
      periods_(new TableView(tr("claim-periods"), this)),
      period_rows_(new RowTable<PeriodRow>(period_columns(QLocale()), this)),
      proposal_rows_(new RowTable<ProposalRow>(proposal_columns(QLocale()), this)),
      sheet_(new Sheet(this)) {
    sentence_->setWordWrap(true);
    body()->addWidget(sentence_);
    body()->addWidget(build_top(), 3);
    periods_->set_model(period_rows_);
    periods_->set_empty_text(tr("No claim has been surveyed twice by the as-at."));
    give_height(periods_, 22);
    body()->addWidget(periods_, 2);
    tell_exports_of(plot_);
    tell_exports_of(periods_);
    tell_exports_of(proposals_);
}

QWidget* ReconcileLeaf::build_top() {
    auto* top = new QWidget(this);
    top_ = new QBoxLayout(QBoxLayout::LeftToRight, top);
    top_->setContentsMargins(0, 0, 0, 0);
    top_->setSpacing(2 * grid);
    top_->addWidget(plot_, 5);
    auto* side = new QVBoxLayout;
    auto* head = new QHBoxLayout;
    head->addWidget(
        make_label(tr("Bulking factors, all claim-periods at once"), Step::body, Weight::semibold, top), 1);
    auto* out = make_button(ButtonKind::tool, tr("Export the plot"), QStringLiteral("export"), top);
    connect(out, &QPushButton::clicked, plot_, &BedPlot::ask_export);
    head->addWidget(out);
    side->addLayout(head);
    proposals_->set_model(proposal_rows_);
    proposals_->set_empty_text(tr("No claim-period can be asked for a bulking factor yet."));
    side->addWidget(proposals_, 1);
    accept_ = make_button(ButtonKind::plain, tr("Accept …"), QStringLiteral("check"), top);
    accept_->setToolTip(tr("Shows what the proposed factor does to every limit; nothing is written yet"));
    side->addWidget(accept_, 0, Qt::AlignLeft);
    top_->addLayout(side, 6);
    give_height(top, 34);
    connect(accept_, &QPushButton::clicked, this, &ReconcileLeaf::open_accept);
    connect(proposals_, &TableView::opened, this, &ReconcileLeaf::open_accept);
    return top;
}

// At a large scale plot and factors lie below each other.
void ReconcileLeaf::resizeEvent(QResizeEvent* event) {
    FiguresPage::resizeEvent(event);
    const bool abreast = width() >= reconcile_abreast_from;
    top_->setDirection(abreast ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    give_height(top_->parentWidget(), abreast ? 34 : 64);
}

void ReconcileLeaf::show_figures(const FiguresMade&) {
    struct Shown {
        QString sentence;
        std::vector<PeriodRow> periods;
        std::vector<ProposalRow> proposals;
    };
    ask<Shown>(
        [](const Figures& figures) {
            const Reconciliation held = reconciliation(*figures.ledger, figures.as_at);
            return Shown{reconcile_sentence(held, QLocale()),
                         period_rows(held, figures.season.zone, QLocale()), proposal_rows(held)};
        },
        [this](Shown shown) {
            sentence_->setText(shown.sentence);
            plot_->show_data(bed_plot_data(shown.periods));
            period_rows_->set_rows(std::move(shown.periods));
            proposal_rows_->set_rows(std::move(shown.proposals));
            for (TableView* view : {periods_, proposals_})
                view->table()->resizeColumnsToContents();
            auto* rows = proposals_->table()->model();
            if (!proposals_->table()->currentIndex().isValid() && rows->rowCount() > 0)
                proposals_->table()->setCurrentIndex(rows->index(0, 0));
            accept_->setEnabled(rows->rowCount() > 0);
        });
}

void ReconcileLeaf::open_accept() {
    const int row = proposals_->current_row();
    if (row < 0) return;
    const ProposalRow proposal = proposal_rows_->row(row);
    if (!proposal.fit) return tell_problem(tr("Nothing can be proposed: %1.").arg(proposal.why_not));
    accepting_ = new AcceptSheet(session(), proposal);
    connect(accepting_, &AcceptSheet::effects_asked, this, &ReconcileLeaf::ask_effects);
    connect(accepting_, &AcceptSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(tr("Revise the bulking factor of %1").arg(proposal.material), accepting_, accept_width);
    ask_effects();
}

void ReconcileLeaf::ask_effects() {
    if (!accepting_) return;
    const FactorToBe factor = accepting_->factor_to_be();
    ask<std::vector<EffectRow>>(
        [factor](const Figures& figures) { return effect_rows(*figures.ledger, factor, figures.as_at); },
        [this](std::vector<EffectRow> effects) {
            if (accepting_) accepting_->show_effects(std::move(effects));
        });
}

}  // namespace spoilbook::form
