// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/pace_leaf.h"

#include <QHBoxLayout>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/shared/button.h"
#include "forms/shared/chart_frame.h"
#include "forms/shared/label.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/figure_row.h"
#include "forms/works/over_dredge_part.h"

namespace spoilbook::form {
namespace {

constexpr int pace_abreast_from = 110 * grid;
constexpr int sheet_width = 1000;

/// A table of its own for a sheet.
template <class Row>
TableView* table_of(std::vector<Row> rows, std::vector<Column<Row>> columns, const QString& title,
                    const QString& empty, std::function<void(const Row&)> open = {}) {
    auto* view = new TableView(title);
    auto* model = new RowTable<Row>(std::move(columns), view);
    model->set_rows(std::move(rows));
    view->set_model(model);
    view->set_empty_text(empty);
    view->table()->resizeColumnsToContents();
    if (open) {
        QObject::connect(view, &TableView::opened, view, [model, open](int row) { open(model->row(row)); });
    }
    return view;
}

}  // namespace

struct PaceLeaf::Shown {
    QString sentence;
    FigureText rate, shift, step, least;
    std::vector<CauseRow> causes;
    std::vector<PaceRow> weeks, shifts;
    std::vector<StepLine> steps;
    ChartData chart;
    std::size_t left_out = 0, outside = 0;
};

PaceLeaf::PaceLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      sheet_(new Sheet(this)),
      delays_sheet_(new Sheet(this)) {
    sentence_->setWordWrap(true);
    body()->addWidget(sentence_);
    auto* figures = new FigureRow(this);
    rate_ = figures->add();
    shift_ = figures->add();
    step_ = figures->add();
    least_ = figures->add();
    body()->addWidget(figures);
    body()->addWidget(build_pictures(), 3);
    body()->addWidget(build_tables(), 2);
}

QWidget* PaceLeaf::build_pictures() {
    auto* halves = new QWidget(this);
    halves_ = new QBoxLayout(QBoxLayout::LeftToRight, halves);
    halves_->setContentsMargins(0, 0, 0, 0);
    halves_->setSpacing(2 * grid);
    auto* left = new QWidget(halves);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    auto* head = new QHBoxLayout;
    head->addWidget(make_label(tr("Delays by cause"), Step::body, Weight::semibold, left), 1);
    bars_ = new LyingBars(tr("Delays by cause"), left);
    auto* out = make_button(ButtonKind::tool, tr("Export the bars"), QStringLiteral("export"), left);
    connect(out, &QPushButton::clicked, bars_, &LyingBars::ask_export);
    head->addWidget(out);
    column->addLayout(head);
    column->addWidget(bars_, 1);
    chart_ = new ChartFrame(halves);
    halves_->addWidget(left, 1);
    halves_->addWidget(chart_, 1);
    give_height(halves, 42);
    tell_exports_of(bars_);
    tell_exports_of(chart_);
    return halves;
}

template <class Row>
TableView* PaceLeaf::add_table(RowTable<Row>*& rows, const QString& title, std::vector<Column<Row>> columns) {
    auto* view = new TableView(title, tabs_);
    rows = new RowTable<Row>(std::move(columns), view);
    view->set_model(rows);
    view->set_empty_text(tr("Nothing is logged by the as-at."));
    tell_exports_of(view);
    tabs_->addTab(view, title);
    return view;
}

QWidget* PaceLeaf::build_tables() {
    tabs_ = new QTabWidget(this);
    tabs_->setDocumentMode(true);
    tabs_->tabBar()->setAccessibleName(tr("Tables of hours and pace"));
    const QLocale locale;
    auto* causes = add_table(causes_, tr("Causes"), cause_columns(locale));
    auto* weeks = add_table(weeks_, tr("Weeks"), pace_columns(tr("Week from"), locale));
    auto* shifts = add_table(shifts_, tr("Shifts"), pace_columns(tr("Shift"), locale));
    add_table(steps_, tr("Positioning"), step_columns(locale));
    over_dredge_ = new OverDredgePart(tabs_);
    tell_exports_of(over_dredge_->table());
    tabs_->addTab(over_dredge_, tr("Over-dredge"));
    connect(over_dredge_, &OverDredgePart::unit_cost_changed, this, &PaceLeaf::ask_over_dredge);
    connect(causes, &TableView::opened, this, [this](int row) {
        const CauseRow& cause = causes_->row(row);
        if (cause.is_delay) return open_delays(tr("Delays: %1").arg(cause.cause), cause.delays);
        // What is no delay is made of every shift.
        open_shifts(tr("Shifts: %1").arg(cause.cause), {});
    });
    connect(weeks, &TableView::opened, this, [this](int row) {
        const PaceRow& week = weeks_->row(row);
        open_shifts(tr("Shifts of the week from %1").arg(week.key), week.shift_names);
    });
    connect(shifts, &TableView::opened, this, [this](int row) {
        const PaceRow& shift = shifts_->row(row);
        open_delays(tr("Delays of shift %1").arg(shift.key), shift.delays);
    });
    give_height(tabs_, 24);
    return tabs_;
}

// At a large scale the two pictures lie below each other.
void PaceLeaf::resizeEvent(QResizeEvent* event) {
    FiguresPage::resizeEvent(event);
    const bool abreast = width() >= pace_abreast_from;
    halves_->setDirection(abreast ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    give_height(halves_->parentWidget(), abreast ? 42 : 84);
}

void PaceLeaf::show_figures(const FiguresMade&) {
    ask<Shown>(
        [](const Figures& f) {
            const QLocale locale;
            const Zone& zone = f.season.zone;
            const SeasonHours hours = season_hours(f.season, f.as_at);
            const Productivity all = productivity(*f.ledger, hours, f.as_at, HoursOver::all);
            const ProductivityRow& whole = all.rows.front();
            const Pace turns = pace(f.season, hours, f.as_at);
            const auto steps = positionings(f.season, hours);
            Shown shown;
            shown.sentence = pace_sentence(whole.time, turns, locale);
            shown.rate = rate_figure(whole, locale);
            shown.shift = shift_figure(whole, locale);
            shown.step = positioning_figure(spread_of(steps), locale);
            shown.least = least_figure(turns, locale);
            if (whole.time.shift_h > 0) shown.causes = cause_rows(whole.time, zone, locale);
            const auto over = [&](HoursOver what) {
                return pace_rows(productivity(*f.ledger, hours, f.as_at, what), zone, what, locale);
            };
            shown.weeks = over(HoursOver::week);
            shown.shifts = over(HoursOver::shift);
            shown.steps = step_lines(steps, zone, locale);
            shown.chart = pace_chart(shown.weeks, zone, locale);
            shown.left_out = hours.delays_left_out;
            shown.outside = all.outside_shifts;
            return shown;
        },
        [this](Shown shown) { show_pace(std::move(shown)); });
    ask_over_dredge();
}

void PaceLeaf::ask_over_dredge() {
    if (!figures()) return;  // the first figures ask for it themselves
    using Told = std::pair<std::vector<OverDredgeRow>, QString>;
    ask<Told>(
        [unit_cost = over_dredge_->unit_cost()](const Figures& f) {
            const auto dug = over_dredge(f.season, f.as_at);
            return Told{over_dredge_rows(dug, unit_cost), over_dredge_sentence(dug, unit_cost, QLocale())};
        },
        [this](Told told) { over_dredge_->show_dug(std::move(told.first), told.second); });
}

void PaceLeaf::show_pace(Shown shown) {
    if (shown.left_out > 0)
        shown.sentence += u' ' + tr("%1 delays name no shift and are left out.").arg(shown.left_out);
    if (shown.outside > 0)
        shown.sentence += u' ' + tr("%1 loads were full in no shift and are left out.").arg(shown.outside);
    sentence_->setText(shown.sentence);
    rate_->show_figure(shown.rate);
    shift_->show_figure(shown.shift);
    step_->show_figure(shown.step);
    least_->show_figure(shown.least);
    bars_->show_bars(cause_bars(shown.causes, QLocale()), tr("hours, and % of the shift hours"),
                     tr("No delay is logged by the as-at."));
    chart_->set_data(shown.chart);
    causes_->set_rows(std::move(shown.causes));
    weeks_->set_rows(std::move(shown.weeks));
    shift_rows_ = shown.shifts;
    shifts_->set_rows(std::move(shown.shifts));
    steps_->set_rows(std::move(shown.steps));
    for (TableView* view : tabs_->findChildren<TableView*>())
        view->table()->resizeColumnsToContents();
}

void PaceLeaf::open_delays(const QString& title, std::vector<DelayLine> lines) {
    Sheet* sheet = sheet_->is_open() ? delays_sheet_ : sheet_;
    sheet->open(title,
                table_of<DelayLine>(std::move(lines), delay_columns(QLocale()), tr("delays"),
                                    tr("No delay is logged.")),
                sheet_width);
}

void PaceLeaf::open_shifts(const QString& title, const std::vector<QString>& names) {
    std::vector<PaceRow> rows;
    std::copy_if(shift_rows_.begin(), shift_rows_.end(), std::back_inserter(rows), [&](const PaceRow& row) {
        return names.empty() || std::find(names.begin(), names.end(), row.key) != names.end();
    });
    sheet_->open(
        title,
        table_of<PaceRow>(
            std::move(rows), pace_columns(tr("Shift"), QLocale()), tr("shifts"), tr("No shift is logged."),
            [this](const PaceRow& row) { open_delays(tr("Delays of shift %1").arg(row.key), row.delays); }),
        sheet_width);
}

}  // namespace spoilbook::form
