// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_leaf.h"

#include <QDragEnterEvent>
#include <QFileInfo>
#include <QMimeData>
#include <QStackedWidget>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/consent/flag_sheet.h"
#include "forms/consent/instruments_part.h"
#include "forms/consent/log_sheet.h"
#include "forms/consent/readings_sheet.h"
#include "forms/consent/solids_sheet.h"
#include "forms/consent/thresholds_part.h"
#include "forms/consent/trigger_sheet.h"
#include "forms/shared/busy_overlay.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/save_file.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/shared/time_field.h"
#include "forms/works/say.h"
#include "model/record/water_sample.h"

namespace spoilbook::form {
namespace {

const QString all_sites = QStringLiteral("*");
// Wider than what stands abreast needs, so that a page which it has made wide is set below one another.
constexpr int abreast_from = 122 * grid;

}  // namespace

TurbidityLeaf::TurbidityLeaf(FiguresSource& source, std::string cache, FolderMemory memory, QWidget* parent)
    : FiguresPage(source, parent),
      cache_(std::move(cache)),
      memory_(std::move(memory)),
      sheet_(new Sheet(this)),
      taker_(new FolderTaker(session(), files_, this)) {
    views_.setMaxThreadCount(1);
    searches_.setMaxThreadCount(1);
    files_.setMaxThreadCount(1);
    setAcceptDrops(true);
    build_head();
    build_chart();
    build_tables();
    taker_->watch(memory_.folder);
}

TurbidityLeaf::~TurbidityLeaf() {
    views_.clear();
    searches_.clear();
    files_.clear();
}

void TurbidityLeaf::resizeEvent(QResizeEvent* event) {
    FiguresPage::resizeEvent(event);
    for (QBoxLayout* part : {head_, tools_})
        part->setDirection(width() >= abreast_from ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

void TurbidityLeaf::watch_folder(const QString& folder) {
    taker_->watch(folder);
    if (memory_.keep) memory_.keep(folder);
}

void TurbidityLeaf::show_figures(const FiguresMade& made) {
    book_ = std::make_shared<TurbidityBook>(made, cache_);
    fill_sites();
    show_instruments();
    wait_for_first();
    ask_view();
    ask_events();
}

void TurbidityLeaf::show_instruments() {
    instruments_->show_stands();
    thresholds_->show_versions();
    const int doubt = instruments_->in_doubt();
    tabs_->setTabText(
        tabs_->indexOf(instruments_),
        doubt > 0 ? tr("Instruments: %1 not known to be calibrated").arg(doubt) : tr("Instruments"));
}

void TurbidityLeaf::fill_sites() {
    std::vector<Choice> choices;
    const auto sites = session().book().rows(definition<Site>().kind());
    std::size_t impact = 0;
    for (const Row& row : sites) {
        const auto site = definition<Site>().read(row);
        if (site.role == "control") continue;
        ++impact;
        choices.push_back({QString::fromStdString(site.site), QString::fromStdString(site.site)});
    }
    if (impact != 1) choices.push_back({all_sites, tr("all sites")});
    site_->set_choices(choices);
    if (!site_->chosen()) site_->set_chosen(choices.front().key);
}

/// What an answer without readings or triggers means. Not before there is one: a book that is being read may
/// have millions.
void TurbidityLeaf::tell_empty() {
    const bool sites = !session().book().rows(definition<Site>().kind()).empty();
    chart_->set_empty_text(sites
                               ? tr("No reading of this site by the as-at. Drag a logger's file onto this "
                                    "page, or take one in by the button above.")
                               : tr("This book has no turbidity site yet. Enter one under All records, then "
                                    "take its logger's file in here."));
}

/// The first answer on a book reads its loggers' files through; later ones leave what is shown until they
/// come.
void TurbidityLeaf::wait_for_first() {
    if (!view_.view) reading_->begin(tr("Reading the loggers' files. The first time takes longest."), false);
    if (events_.stands.empty()) looking_->begin(tr("Looking for passed triggers"), false);
}

std::vector<std::string> TurbidityLeaf::sites_shown() const {
    std::vector<std::string> impact, control;
    for (const Row& row : session().book().rows(definition<Site>().kind())) {
        const auto site = definition<Site>().read(row);
        const bool chosen =
            site_->chosen() == all_sites || site_->chosen() == QString::fromStdString(site.site);
        if (site.role == "control")
            control.push_back(site.site);
        else if (chosen)
            impact.push_back(site.site);
    }
    impact.insert(impact.end(), control.begin(), control.end());
    return impact;
}

/// One question at a time; while it is answered only the newest window is kept.
void TurbidityLeaf::ask_view() {
    if (!book_) return;
    again_ = at_work_;
    if (at_work_) return;
    at_work_ = true;
    const ViewAsked asked{sites_shown(), wanted_, chart_->columns()};
    const auto book = book_;
    off_screen<ViewAnswer>(
        views_, this, [book, asked] { return book->view(asked); },
        [this, book](const ViewAnswer& answer) {
            at_work_ = false;
            if (book == book_) show_view(answer);
            if (again_) ask_view();
        });
}

void TurbidityLeaf::show_view(const ViewAnswer& answer) {
    reading_->end();
    tell_empty();
    if (!answer.problem.isEmpty()) return tell_problem(answer.problem);
    view_ = answer;
    chart_->set_extent(answer.extent);
    if (!wanted_ && answer.view) wanted_ = answer.view->window;
    if (wanted_) {
        if (!again_) chart_->show_window(*wanted_);
        from_->set_value(wanted_->from);
        to_->set_value(wanted_->to);
    }
    show_drawn();
    view_rows_->set_rows(answer.view ? view_rows(*answer.view) : std::vector<ViewRow>{});
    reading_rows_->set_rows(answer.readings);
    tabs_->setTabText(2, answer.readings.size() >= most_reading_rows
                             ? tr("Readings: the first %1 of the window").arg(answer.readings.size())
                             : tr("Readings: %1").arg(answer.readings.size()));
    const bool days = answer.view && std::any_of(answer.view->sites.begin(), answer.view->sites.end(),
                                                 [](const ViewSite& site) { return site.whole_days; });
    note_->setVisible(days);
    if (numbers_->isVisible()) numbers_->table()->resizeColumnsToContents();
}

void TurbidityLeaf::show_drawn() {
    TurbidityDrawn drawn;
    if (view_.view) drawn.view = *view_.view;
    drawn.keeps = book_;
    drawn.zone = session().zone();
    drawn.digging = events_.digging;
    drawn.releasing = events_.releasing;
    const auto sites = sites_shown();
    std::vector<TriggerRow> shown;
    bar_rows_.clear();
    for (std::size_t i = 0; i < events_.events.size(); ++i) {
        const TriggerRow& row = events_.events[i];
        if (std::find(sites.begin(), sites.end(), row.site.toStdString()) == sites.end()) continue;
        shown.push_back(row);
        bar_rows_.push_back(i);
    }
    if (book_) drawn.events = event_bars(shown, book_->figures()->as_at);
    chart_->show_data(std::move(drawn));
}

void TurbidityLeaf::ask_events() {
    tabs_->setTabText(0, tr("Passed triggers: looking …"));
    const auto book = book_;
    off_screen<EventsAnswer>(
        searches_, this, [book] { return book->events(); },
        [this, book](EventsAnswer answer) {
            if (book == book_) show_events(std::move(answer));
        });
}

void TurbidityLeaf::show_events(EventsAnswer answer) {
    looking_->end();
    if (!answer.problem.isEmpty()) tell_problem(answer.problem);
    events_ = std::move(answer);
    triggers_->set_empty_text(tr("No trigger was passed by the as-at."));
    months_->set_empty_text(tr("No reading by the as-at."));
    trigger_rows_->set_rows(events_.events);
    month_rows_->set_rows(events_.months);
    const auto waiting = std::count_if(events_.events.begin(), events_.events.end(),
                                       [](const TriggerRow& row) { return !row.answered; });
    tabs_->setTabText(
        0, waiting > 0 ? tr("Passed triggers: %1, not answered: %2").arg(events_.events.size()).arg(waiting)
                       : tr("Passed triggers: %1").arg(events_.events.size()));
    for (TableView* view : {triggers_, months_})
        view->table()->resizeColumnsToContents();
    show_stands();
    show_drawn();
}

void TurbidityLeaf::show_stands() {
    SiteStands shown;
    QStringList said;
    int worst = -1;
    for (const auto& [site, stands] : events_.stands) {
        const auto sites = sites_shown();
        if (std::find(sites.begin(), sites.end(), site) == sites.end()) continue;
        const bool watched = stands.word != tr("no trigger");
        if (!watched && events_.stands.size() > 1) continue;
        const int rank = stands.state == State::hold        ? 3
                         : stands.state == State::attention ? 2
                         : stands.state == State::unknown   ? 1
                                                            : 0;
        if (rank > worst) shown = stands;
        worst = std::max(worst, rank);
        said << QStringLiteral("%1: %2").arg(QString::fromStdString(site), stands.sentence);
    }
    mark_->setVisible(worst >= 0);
    mark_->show_state(shown.state, shown.word);
    sentence_->setText(said.join(QStringLiteral("  ")));
}

void TurbidityLeaf::open_event(int index) {
    if (index < 0 || !book_) return;
    const TriggerRow row = trigger_rows_->row(index);
    if (site_->chosen() != all_sites) site_->set_chosen(row.site);
    const Period span = row.span(book_->figures()->as_at);
    const std::int64_t beside = std::max<std::int64_t>((span.to - span.from) / 2, 6 * ms_per_hour);
    wanted_ = Period{span.from - beside, span.to + beside};
    ask_view();
    const auto bar = std::find(bar_rows_.begin(), bar_rows_.end(), std::size_t(index));
    chart_->mark(bar == bar_rows_.end() ? -1 : int(bar - bar_rows_.begin()));
    opened_ = new TriggerSheet(session(), row);
    connect(opened_, &TriggerSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(tr("Condition %1 at %2").arg(row.condition, row.site), opened_, trigger_width);
    const auto book = book_;
    off_screen<EvidenceAnswer>(
        views_, this, [book, row] { return book->evidence(row); },
        [this](const EvidenceAnswer& evidence) {
            if (opened_) opened_->show_evidence(evidence);
        });
}

void TurbidityLeaf::open_bar(int bar) {
    const int row = int(bar_rows_.at(std::size_t(bar)));
    const QModelIndex index = triggers_->shown_rows()->mapFromSource(trigger_rows_->index(row, 0));
    tabs_->setCurrentIndex(0);
    if (index.isValid()) triggers_->table()->setCurrentIndex(index);
    open_event(row);
}

void TurbidityLeaf::open_flag() {
    std::vector<ReadingRow> chosen;
    for (const QModelIndex& index : readings_->table()->selectionModel()->selectedRows())
        chosen.push_back(reading_rows_->row(readings_->shown_rows()->mapToSource(index).row()));
    if (chosen.empty() && readings_->current_row() >= 0)
        chosen.push_back(reading_rows_->row(readings_->current_row()));
    if (chosen.empty()) return tell_problem(tr("Choose readings in the table first."));
    const auto other = std::any_of(chosen.begin(), chosen.end(),
                                   [&](const ReadingRow& row) { return row.site != chosen.front().site; });
    if (other) return tell_problem(tr("Choose readings of one site: a flag belongs to a site."));
    const auto [first, last] = std::minmax_element(
        chosen.begin(), chosen.end(), [](const ReadingRow& a, const ReadingRow& b) { return a.at < b.at; });
    auto* page = new FlagSheet(session(), first->site, first->at, last->at, int(chosen.size()));
    connect(page, &FlagSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(tr("A flag on readings"), page);
}

void TurbidityLeaf::open_solids() {
    QString site = site_->chosen().value_or(QString());
    const auto sites = sites_shown();
    if (site == all_sites) site = sites.empty() ? QString() : QString::fromStdString(sites.front());
    auto* page = new SolidsSheet(session(), site);
    connect(page, &SolidsSheet::exported, this, &TurbidityLeaf::tell_written);
    connect(page, &SolidsSheet::failed, this, &TurbidityLeaf::tell_problem);
    connect(page, &SolidsSheet::sample_wanted, this, &TurbidityLeaf::write_sample, Qt::QueuedConnection);
    sheet_->open(tr("Suspended solids from turbidity"), page, solids_width);
}

void TurbidityLeaf::write_sample(const QString& site) {
    std::vector<LogColumn> columns{
        {"site",
         tr("Site"),
         {},
         Value(site.toStdString()),
         tr("the site that was shown"),
         tr("The site must be said.")},
        {"time", tr("Taken"), {}, {}, {}, tr("When it was taken must be said.")},
        {"turbidity", tr("Turbidity"), tr("As the site's sensor read then, in the site's unit.")},
        {"solids_mg_l", tr("Suspended solids")},
        {"lab", tr("Laboratory and its number")},
        {"by", tr("Taken by")}};
    auto* page = new LogSheet(session(), definition<WaterSample>().kind(), "W-", {}, std::move(columns));
    connect(page, &LogSheet::written, this, &TurbidityLeaf::open_solids, Qt::QueuedConnection);
    sheet_->open(tr("A sample of water"), page, log_width);
}

void TurbidityLeaf::offer_file(const QString& path) {
    auto* page =
        new ReadingsSheet(session(), views_, path,
                          site_->chosen() == all_sites ? QString() : site_->chosen().value_or(QString()));
    connect(page, &ReadingsSheet::taken, this, [this](const QString& what) {
        sheet_->close_sheet();
        messages().show_message(Message::done, what);
    });
    sheet_->open(tr("Take in %1").arg(QFileInfo(path).fileName()), page, readings_width);
}

void TurbidityLeaf::dragEnterEvent(QDragEnterEvent* event) {
    const auto urls = event->mimeData()->urls();
    if (urls.size() == 1 && urls.front().isLocalFile()) event->acceptProposedAction();
}

void TurbidityLeaf::dropEvent(QDropEvent* event) {
    offer_file(event->mimeData()->urls().front().toLocalFile());
}

}  // namespace spoilbook::form
