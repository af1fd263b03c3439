// SPDX-License-Identifier: GPL-3.0-or-later
// The parts that the turbidity page is put together from.
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QTabBar>
#include <QTabWidget>

#include "forms/consent/folder_line.h"
#include "forms/consent/instruments_part.h"
#include "forms/consent/thresholds_part.h"
#include "forms/consent/turbidity_leaf.h"
#include "forms/shared/busy_overlay.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/save_file.h"
#include "forms/shared/table_text.h"
#include "forms/shared/table_view.h"
#include "forms/shared/time_field.h"

namespace spoilbook::form {

void TurbidityLeaf::build_head() {
    site_ = new ChoiceField(tr("Site, with its control"), this);
    site_->setMaximumWidth(24 * grid);
    const auto context = [this] { return TimeContext{session().zone(), session().now(), {}}; };
    from_ = new TimeField(tr("From"), context, this);
    to_ = new TimeField(tr("To"), context, this);
    head_ = new QBoxLayout(QBoxLayout::TopToBottom);
    head_->setSpacing(2 * grid);
    head_->addWidget(site_, 0, Qt::AlignTop);
    auto* span = new QHBoxLayout;
    span->setSpacing(2 * grid);
    span->addWidget(from_, 1, Qt::AlignTop);
    span->addWidget(to_, 1, Qt::AlignTop);
    head_->addLayout(span, 1);
    body()->addLayout(head_);
    auto* line = new FolderLine(*taker_, session().zone(), this);
    connect(line, &FolderLine::answer_wanted, this, &TurbidityLeaf::offer_file);
    connect(line, &FolderLine::stopped, this, [this] { watch_folder({}); });
    body()->addWidget(line);
    mark_ = new StateMark(State::unknown, this);
    mark_->hide();
    sentence_ = make_label({}, Step::body, Weight::regular, this);
    sentence_->setWordWrap(true);
    auto* answer = new QHBoxLayout;
    answer->setSpacing(2 * grid);
    answer->addWidget(mark_, 0, Qt::AlignTop);
    answer->addWidget(sentence_, 1);
    body()->addLayout(answer);
    connect(site_, &ChoiceField::committed, this, [this] {
        chart_->mark(-1);
        ask_view();
        show_stands();
    });
    const auto typed = [this] {
        if (!from_->value() || !to_->value()) return;
        const bool right = *from_->value() < *to_->value();
        to_->show_problem(right ? QString() : tr("The end must come after the start."));
        if (!right) return;
        wanted_ = Period{*from_->value(), *to_->value()};
        ask_view();
    };
    connect(from_, &TimeField::committed, this, typed);
    connect(to_, &TimeField::committed, this, typed);
}

void TurbidityLeaf::add_takers(QHBoxLayout* row, QWidget* parent) {
    auto* take = make_button(ButtonKind::plain, tr("Take in a file …"), QStringLiteral("add"), parent);
    take->setEnabled(session().writable());
    if (!session().writable()) take->setToolTip(session().why_not_writable());
    connect(take, &QPushButton::clicked, this, [this] {
        choose_file(this, tr("A logger's file"), tr("Tables (*.csv *.txt *.dat *.tsv);;All files (*)"),
                    [this](const QString& path) { offer_file(path); });
    });
    row->addWidget(take);
    auto* watch = make_button(ButtonKind::plain, tr("Watch a folder …"), QStringLiteral("folder"), parent);
    watch->setEnabled(session().writable());
    watch->setToolTip(session().writable()
                          ? tr("New and grown files of loggers are taken in from there as they appear")
                          : session().why_not_writable());
    connect(watch, &QPushButton::clicked, this, [this] {
        choose_folder(this, tr("The folder that loggers' files are put into"),
                      [this](const QString& folder) { watch_folder(folder); });
    });
    row->addWidget(watch);
    auto* solids = make_button(ButtonKind::plain, tr("Solids …"), QStringLiteral("chart"), parent);
    connect(solids, &QPushButton::clicked, this, &TurbidityLeaf::open_solids);
    row->addWidget(solids);
}

QWidget* TurbidityLeaf::build_window_boxes() {
    auto* bar = new QWidget(this);
    tools_ = new QBoxLayout(QBoxLayout::TopToBottom, bar);
    tools_->setContentsMargins(0, 0, 0, 0);
    auto* takers = new QHBoxLayout;
    auto* row = new QHBoxLayout;
    for (QHBoxLayout* part : {takers, row}) {
        part->setSpacing(half_grid);
        tools_->addLayout(part);
    }
    note_ = make_quiet(tr("Too many readings to judge each for a picture: days are drawn, least to greatest. "
                          "Statistic and levels come as you zoom in."),
                       Step::small, this);
    note_->setWordWrap(true);
    note_->hide();
    add_takers(takers, bar);
    takers->addStretch();
    row->addStretch();
    const auto add = [&](const QString& text, auto act) {
        auto* button = make_button(ButtonKind::quiet, text, {}, bar);
        connect(button, &QPushButton::clicked, chart_, act);
        row->addWidget(button);
    };
    const auto turn = [&](const QString& name, const QString& picture, double windows) {
        auto* button = make_button(ButtonKind::tool, name, picture, bar);
        connect(button, &QPushButton::clicked, chart_, [this, windows] { chart_->pan(windows); });
        row->addWidget(button);
    };
    turn(tr("Earlier"), QStringLiteral("left"), -0.5);
    turn(tr("Later"), QStringLiteral("right"), 0.5);
    add(tr("Nearer"), [this] { chart_->zoom(1.6); });
    add(tr("Farther"), [this] { chart_->zoom(1 / 1.6); });
    add(tr("All"), [this] { chart_->show_all(); });
    auto* table =
        make_button(ButtonKind::tool, tr("Show the numbers as a table"), QStringLiteral("table"), bar);
    table->setCheckable(true);
    connect(table, &QPushButton::toggled, this, [this](bool on) {
        pages_->setCurrentIndex(on ? 1 : 0);
        if (on) numbers_->table()->resizeColumnsToContents();
    });
    row->addWidget(table);
    auto* out = make_button(ButtonKind::tool, tr("Export this chart"), QStringLiteral("export"), bar);
    connect(out, &QPushButton::clicked, this, &TurbidityLeaf::write_drawing);
    row->addWidget(out);
    return bar;
}

void TurbidityLeaf::build_chart() {
    pages_ = new QStackedWidget(this);
    chart_ = new TurbidityChart(tr("Turbidity"), pages_);
    numbers_ = new TableView(tr("turbidity"), pages_);
    view_rows_ = new RowTable<ViewRow>(view_columns(session().zone(), QLocale()), this);
    numbers_->set_model(view_rows_);
    numbers_->set_empty_text(tr("No reading in this window."));
    pages_->addWidget(chart_);
    pages_->addWidget(numbers_);
    body()->addWidget(build_window_boxes());
    body()->addWidget(note_);
    give_height(pages_, 30);
    body()->addWidget(pages_, 3);
    tell_exports_of(chart_);
    tell_exports_of(numbers_);
    connect(chart_, &TurbidityChart::window_asked, this, [this](Period window) {
        wanted_ = window;
        ask_view();
    });
    connect(chart_, &TurbidityChart::event_pressed, this, &TurbidityLeaf::open_bar);
}

void TurbidityLeaf::build_tables() {
    const Zone zone = session().zone();
    const QLocale locale;
    tabs_ = new QTabWidget(this);
    tabs_->setDocumentMode(true);
    tabs_->tabBar()->setAccessibleName(tr("Triggers, completeness, readings, instruments, thresholds"));
    triggers_ = new TableView(tr("passed triggers"), this);
    months_ = new TableView(tr("completeness"), this);
    readings_ = new TableView(tr("readings"), this);
    trigger_rows_ = new RowTable<TriggerRow>(trigger_columns(zone, locale), this);
    month_rows_ = new RowTable<MonthRow>(month_columns(locale), this);
    reading_rows_ = new RowTable<ReadingRow>(reading_columns(zone, locale), this);
    triggers_->set_model(trigger_rows_);
    months_->set_model(month_rows_);
    readings_->set_model(reading_rows_);
    readings_->set_empty_text(tr("No reading in this window."));
    auto* page = new QWidget(this);
    auto* all = new QVBoxLayout(page);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(half_grid);
    flag_ = make_button(ButtonKind::plain, tr("Set a flag on the chosen readings …"), QStringLiteral("sign"),
                        page);
    connect(flag_, &QPushButton::clicked, this, &TurbidityLeaf::open_flag);
    all->addWidget(flag_, 0, Qt::AlignLeft);
    all->addWidget(readings_, 1);
    tabs_->addTab(triggers_, tr("Passed triggers"));
    tabs_->addTab(months_, tr("Completeness"));
    tabs_->addTab(page, tr("Readings"));
    instruments_ = new InstrumentsPart(session(), sheet_, this);
    thresholds_ = new ThresholdsPart(session(), sheet_, this);
    tabs_->addTab(instruments_, tr("Instruments"));
    tabs_->addTab(thresholds_, tr("Thresholds"));
    tell_exports_of(instruments_->table());
    tell_exports_of(thresholds_->table());
    reading_ = new BusyOverlay(pages_);
    looking_ = new BusyOverlay(triggers_);
    give_height(tabs_, 32);
    body()->addWidget(tabs_, 2);
    connect(triggers_, &TableView::opened, this, &TurbidityLeaf::open_event);
    tell_exports_of(triggers_);
    tell_exports_of(months_);
    tell_exports_of(readings_);
}

/// The picture, or its numbers.
void TurbidityLeaf::write_drawing() {
    save_file(
        this, tr("Export the turbidity"), tr("turbidity") + QStringLiteral(".png"),
        tr("Picture (*.png);;Drawing (*.svg);;Page (*.pdf);;Numbers (*.csv)"), [this](const QString& path) {
            const bool table = path.endsWith(QStringLiteral(".csv"), Qt::CaseInsensitive);
            const QString why = table ? write_file(path, csv(*view_rows_).toUtf8()) : chart_->write(path);
            if (why.isEmpty())
                tell_written(path);
            else
                tell_problem(why);
        });
}

}  // namespace spoilbook::form
