// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/burndown_leaf.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include "forms/shared/chart_frame.h"
#include "forms/shared/figure.h"
#include "forms/shared/label.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/burndown_chart.h"
#include "forms/works/burndown_words.h"
#include "forms/works/evidence_ask.h"
#include "forms/works/figure_row.h"
#include "forms/works/limits_table.h"

namespace spoilbook::form {

BurndownLeaf::BurndownLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      chart_(new ChartFrame(this)),
      limits_(new LimitsTable(this)),
      sheet_(new Sheet(this)),
      load_sheet_(new Sheet(this)) {
    sentence_->setWordWrap(true);
    body()->addWidget(sentence_);
    body()->addWidget(build_figures());
    give_height(chart_, 38);
    body()->addWidget(chart_, 3);
    give_height(limits_, 24);
    body()->addWidget(limits_, 2);
    tell_exports_of(chart_);
    tell_exports_of(limits_->view());
    connect(limits_, &LimitsTable::evidence_asked, this, [this](int row) {
        const LimitRow limit = limits_->row(row);
        ask<std::vector<EvidenceRow>>(evidence_of(limit.place), [this, limit](std::vector<EvidenceRow> rows) {
            sheet_->open(
                tr("Condition %1").arg(limit.name),
                evidence_page(limit, std::move(rows), QLocale(), opens_loads(session(), load_sheet_), sheet_),
                evidence_width);
        });
    });
}

QWidget* BurndownLeaf::build_figures() {
    auto* row = new FigureRow(this);
    dredged_ = row->add();
    left_ = row->add();
    plan_ = row->add();
    headroom_ = row->add();
    return row;
}

void BurndownLeaf::show_numbers(const Figures& figures) {
    const QLocale locale;
    const LimitState* least = least_headroom(figures.limits);
    sentence_->setText(burndown_sentence(figures.burn, figures.limits, locale));
    dredged_->show_figure(dredged_figure(figures.burn, locale));
    left_->show_figure(left_figure(figures.burn, locale));
    plan_->show_figure(plan_figure(figures.burn, locale));
    headroom_->show_figure(headroom_figure(least, locale));
    if (least) {
        const auto [state, word] = standing_shown(*least, locale);
        headroom_->show_state(state, word);
    } else {
        headroom_->hide_state();
    }
}

void BurndownLeaf::show_figures(const FiguresMade& made) {
    const Zone zone = made->season.zone;
    show_numbers(*made);
    chart_->set_data(burndown_chart(made->burn, zone.day_of(made->as_at), QLocale()));
    limits_->show_rows(limit_rows(made->limits, zone, QLocale()));
    if (!made->unread.empty()) tell_problem(refusals_shown(made->unread));
}

}  // namespace spoilbook::form
