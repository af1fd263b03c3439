// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/burndown_leaf.h"

#include <QButtonGroup>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/chart_frame.h"
#include "forms/shared/figure.h"
#include "forms/shared/label.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/burndown_chart.h"
#include "forms/works/burndown_words.h"
#include "forms/works/evidence_ask.h"
#include "forms/works/figure_row.h"
#include "forms/works/forecast_words.h"
#include "forms/works/limits_table.h"
#include "forms/works/what_if_panel.h"
#include "forms/works/what_if_words.h"

namespace spoilbook::form {

namespace {

constexpr int burndown_abreast_from = 110 * grid;

}  // namespace

BurndownLeaf::BurndownLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      first_(make_label({}, Step::strong, Weight::regular, this)),
      season_(make_button(ButtonKind::plain, tr("Whole season"), {}, this)),
      what_if_(new WhatIfPanel(this)),
      chart_(new ChartFrame(this)),
      limits_(new LimitsTable(this)),
      date_rows_(new RowTable<ForecastRow>(forecast_columns(QLocale()), this)),
      dates_(new TableView(tr("forecast dates"), this)),
      tables_(new QStackedWidget(this)),
      sheet_(new Sheet(this)),
      load_sheet_(new Sheet(this)) {
    first_->setWordWrap(true);
    body()->addWidget(first_);
    body()->addWidget(build_figures());
    give_height(chart_, 36);
    body()->addWidget(chart_, 3);
    body()->addWidget(build_tables(), 2);
    tell_exports_of(chart_);
    tell_exports_of(limits_->view());
    tell_exports_of(dates_);
    connect(what_if_, &WhatIfPanel::changed, this, &BurndownLeaf::ask_forecast);
    connect(&forecasts_, &ForecastSource::began, this, &BurndownLeaf::tell_busy);
    connect(&forecasts_, &ForecastSource::made, this, &BurndownLeaf::show_forecast);
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

QWidget* BurndownLeaf::build_tables() {
    auto* part = new QWidget(this);
    auto* all = new QVBoxLayout(part);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(grid);
    date_rows_->setParent(dates_);
    dates_->set_model(date_rows_);
    give_height(tables_, 28);
    tables_->addWidget(limits_);
    tables_->addWidget(dates_);
    controls_ = new QBoxLayout(QBoxLayout::TopToBottom);
    controls_->setSpacing(grid);
    controls_->addWidget(what_if_->foot(), 1);
    auto* row = new QHBoxLayout;
    row->setSpacing(grid);
    row->addStretch();
    controls_->addLayout(row);
    season_->setCheckable(true);
    connect(season_, &QPushButton::toggled, this, &BurndownLeaf::draw_chart);
    row->addWidget(season_, 0, Qt::AlignVCenter);
    auto* pages = new QButtonGroup(this);
    for (const QString& name : {tr("Limits"), tr("Dates")}) {
        auto* page = make_button(ButtonKind::plain, name, {}, part);
        page->setCheckable(true);
        pages->addButton(page, int(pages->buttons().size()));
        row->addWidget(page, 0, Qt::AlignVCenter);
    }
    pages->button(0)->setChecked(true);
    connect(pages, &QButtonGroup::idClicked, tables_, &QStackedWidget::setCurrentIndex);
    all->addWidget(what_if_);
    all->addLayout(controls_);
    all->addWidget(tables_, 1);
    // The page above counts a part by its own least height, and not by those of the rows inside it.
    connect(what_if_, &WhatIfPanel::height_changed, part, [this, part, all] {
        part->setMinimumHeight(what_if_->minimumHeight() + controls_->sizeHint().height() +
                               tables_->minimumHeight() + 2 * all->spacing());
    });
    return part;
}

// At a large scale the buttons lie below the words.
void BurndownLeaf::resizeEvent(QResizeEvent* event) {
    FiguresPage::resizeEvent(event);
    controls_->setDirection(width() >= burndown_abreast_from ? QBoxLayout::LeftToRight
                                                             : QBoxLayout::TopToBottom);
}

void BurndownLeaf::ask_forecast() {
    if (figures()) forecasts_.want(figures(), what_if_->supposed());
}

void BurndownLeaf::tell_busy() {
    constexpr int patience_ms = 200;
    QTimer::singleShot(patience_ms, this, [this] {
        if (!forecasts_.at_work()) return;
        // A forecast of a minute ago may be read on while a newer one is made; one of other suppositions not.
        const auto& before = forecasts_.newest();
        if (!before || !(before->supposed == what_if_->supposed()))
            first_->setText(tr("Working out what comes first."));
    });
}

void BurndownLeaf::show_forecast() {
    const ForecastMade& made = *forecasts_.newest();
    const QLocale locale;
    const Day as_at = made.figures->season.zone.day_of(made.figures->as_at);
    const Forecast& forecast = made.forecast;
    const bool failed = !made.failed.isEmpty();
    const QString sentence = failed ? tr("What comes first could not be worked out: %1").arg(made.failed)
                                    : forecast_sentence(forecast, as_at, locale);
    const bool is_supposed = !(made.supposed == WorksSupposed{});
    // What is only supposed must not be read as what is to be expected.
    QString said = is_supposed ? supposed_shown(made.supposed, as_at, locale) + u' ' + sentence : sentence;
    if (is_supposed && made.as_logged.why_none.empty() && !failed)
        said += u' ' + tr("As logged the target %1.").arg(dates_shown(made.as_logged.target, as_at, locale));
    first_->setText(said);
    first_->setToolTip(burndown_sentence(made.figures->burn, made.figures->limits, locale));
    what_if_->set_logged(made.logged, as_at);
    what_if_->tell(is_supposed && !failed ? held_up_shown(made.logged, made.to_be, locale)
                                          : held_up_shown(made.logged, made.as_logged.weeks, locale));
    date_rows_->set_rows(failed ? std::vector<ForecastRow>()
                                : forecast_rows(forecast, is_supposed ? &made.as_logged : nullptr));
    dates_->set_empty_text(sentence);
    dates_->table()->resizeColumnsToContents();
    draw_chart();
}

void BurndownLeaf::draw_chart() {
    if (!forecasts_.newest()) return;
    const ForecastMade& made = *forecasts_.newest();
    const Forecast& forecast = made.forecast;
    const QLocale locale;
    const Day as_at = made.figures->season.zone.day_of(made.figures->as_at);
    const bool none = !made.failed.isEmpty() || !forecast.why_none.empty();
    const bool is_supposed = !none && !(made.supposed == WorksSupposed{});
    ChartData chart = burndown_chart(made.figures->burn, as_at, locale, none ? nullptr : &forecast,
                                     season_->isChecked(), is_supposed ? &made.as_logged : nullptr);
    chart.sentence = unknown_words(made.figures->burn);
    if (!none && !forecast.limits.empty())
        chart.sentence += tr("A tick with a condition's number: used up by that day as likely as not.");
    season_->setEnabled(!none);
    chart_->set_data(chart);
}

void BurndownLeaf::show_numbers(const Figures& figures) {
    const QLocale locale;
    const LimitState* least = least_headroom(figures.limits);
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
    ChartData chart = burndown_chart(made->burn, zone.day_of(made->as_at), QLocale());
    chart.sentence = unknown_words(made->burn);
    // What is drawn stays until the forecast of the new figures is there: the picture does not flicker.
    if (!forecasts_.newest()) chart_->set_data(chart);
    ask_forecast();
    limits_->show_rows(limit_rows(made->limits, zone, QLocale()));
    if (!made->unread.empty()) tell_problem(refusals_shown(made->unread));
}

}  // namespace spoilbook::form
