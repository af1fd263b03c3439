// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/thresholds_part.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/consent/log_sheet.h"
#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/record_sheet.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "model/record/watched_water.h"

namespace spoilbook::form {

ThresholdsPart::ThresholdsPart(BookSession& session, Sheet* sheet, QWidget* parent)
    : QWidget(parent),
      session_(session),
      sheet_(sheet),
      table_(new TableView(tr("thresholds"), this)),
      rows_(new RowTable<ThresholdVersion>(threshold_columns(session.zone(), QLocale()), this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(half_grid);
    auto* set = make_button(ButtonKind::plain, tr("Set a site's thresholds from a time on …"),
                            QStringLiteral("add"), this);
    set->setEnabled(session_.writable());
    if (!session_.writable()) set->setToolTip(session_.why_not_writable());
    connect(set, &QPushButton::clicked, this, &ThresholdsPart::set_new);
    auto* head = new QHBoxLayout;
    head->addWidget(set);
    auto* note = make_quiet(tr("A test with no threshold is not evaluated. Of versions that overlap the one "
                               "written last holds, whole."),
                            Step::small, this);
    note->setWordWrap(true);
    head->addWidget(note, 1);
    all->addLayout(head);
    table_->set_model(rows_);
    table_->set_empty_text(tr("This book has no turbidity site yet."));
    all->addWidget(table_, 1);
    connect(table_, &TableView::opened, this, &ThresholdsPart::open);
    connect(&session_, &Session::changed, this, &ThresholdsPart::show_versions);
    show_versions();
}

void ThresholdsPart::show_versions() {
    rows_->set_rows(threshold_versions(session_.book(), session_.figures_at()));
    table_->table()->resizeColumnsToContents();
}

void ThresholdsPart::set_new() {
    const int place = table_->current_row();
    const auto versions = threshold_versions(session_.book(), session_.figures_at());
    if (versions.empty()) return;
    const std::string site = place < 0 ? versions.front().site : rows_->row(place).site;
    Thresholds now;
    QString unit;
    for (const ThresholdVersion& version : versions) {
        if (version.site != site) continue;
        unit = QString::fromStdString(version.unit);
        if (version.in_force) now = version.span.thresholds;
    }
    std::vector<LogColumn> columns{
        {"from",
         tr("From"),
         tr("A day like 2026-06-01, or a time with its offset."),
         {},
         {},
         tr("From when they hold must be said.")},
        {"to", tr("Until just before"), tr("Blank: until another version holds.")}};
    const auto ask = [&](const char* name, const QString& title, const std::optional<double>& held) {
        LogColumn column{name, title};
        if (held) column.offered = Value(*held);
        column.offered_why = tr("in force now");
        columns.push_back(std::move(column));
    };
    ask("range_low", tr("Below it a reading fails, %1").arg(unit), now.range_low);
    ask("range_high", tr("Above it a reading fails, %1").arg(unit), now.range_high);
    ask("suspect_low", tr("Below it a reading is suspect, %1").arg(unit), now.suspect_low);
    ask("suspect_high", tr("Above it a reading is suspect, %1").arg(unit), now.suspect_high);
    ask("spike", tr("A higher spike is suspect, %1").arg(unit), now.spike);
    ask("spike_fail", tr("A higher spike fails, %1").arg(unit), now.spike_fail);
    ask("rate_per_min", tr("A faster change is suspect, %1 a minute").arg(unit), now.rate_per_min);
    ask("flat_min", tr("Unchanged for longer is suspect"), now.flat_min);
    ask("flat_fail_min", tr("Unchanged for longer fails"), now.flat_fail_min);
    ask("flat_tolerance", tr("Nearer readings are unchanged, %1").arg(unit), now.flat_tolerance);
    auto* page =
        new LogSheet(session_, definition<SiteCheck>().kind(), "K-", {{"site", site}}, std::move(columns));
    page->explain(tr("A new version for %1. It holds whole: a box left blank means that this test is not "
                     "evaluated. The versions before stay, and hold for the readings before.")
                      .arg(QString::fromStdString(site)));
    connect(page, &LogSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(tr("Thresholds of %1").arg(QString::fromStdString(site)), page, log_width);
}

void ThresholdsPart::open(int place) {
    if (place < 0) return;
    const ThresholdVersion version = rows_->row(place);
    const Kind& kind = version.check.empty() ? definition<Site>().kind() : definition<SiteCheck>().kind();
    const auto row = session_.book().labelled(kind, version.check.empty() ? version.site : version.check);
    if (!row) return;
    sheet_->open(tr("Thresholds of %1").arg(QString::fromStdString(version.site)),
                 new RecordSheet(session_, kind, row->id), log_width);
}

}  // namespace spoilbook::form
