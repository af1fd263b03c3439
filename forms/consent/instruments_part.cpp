// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/instruments_part.h"

#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/consent/log_sheet.h"
#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/flow_layout.h"
#include "forms/shared/label.h"
#include "forms/shared/record_sheet.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

/// What was done to a logger, newest first, a line each.
QString services_of(const Book& book, const InstrumentStand& stand, const Zone& zone) {
    std::vector<Service> found;
    for (const Row& row : book.rows(definition<Service>().kind())) {
        auto service = definition<Service>().read(row);
        if (service.site == stand.row.site && service.serial == stand.row.serial) found.push_back(service);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Service& a, const Service& b) { return a.time > b.time; });
    QStringList lines;
    for (const Service& service : found)
        lines << QStringLiteral("%1   %2").arg(
            service.time ? moment_shown(*service.time, zone, QLocale()) : QStringLiteral("–"),
            book_text(service.what));
    return lines.join(u'\n');
}

}  // namespace

InstrumentsPart::InstrumentsPart(BookSession& session, Sheet* sheet, QWidget* parent)
    : QWidget(parent),
      session_(session),
      sheet_(sheet),
      table_(new TableView(tr("instruments"), this)),
      rows_(new RowTable<InstrumentStand>(
          instrument_columns([&session] { return session.figures_at(); }, session.zone(), QLocale()), this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(half_grid);
    auto* bar = new QWidget(this);
    auto* presses = new FlowLayout(bar);
    presses->setContentsMargins(0, 0, 0, 0);
    presses->setSpacing(half_grid);
    const auto add = [&](const QString& text, const char* icon, auto act) {
        auto* button = make_button(ButtonKind::plain, text, QString::fromLatin1(icon), this);
        button->setEnabled(session_.writable());
        if (!session_.writable()) button->setToolTip(session_.why_not_writable());
        connect(button, &QPushButton::clicked, this, act);
        presses->addWidget(button);
    };
    add(tr("Deploy an instrument …"), "add", &InstrumentsPart::deploy);
    add(tr("Write a calibration …"), "check", &InstrumentsPart::calibrate);
    add(tr("Write a service …"), "sign", &InstrumentsPart::serve);
    all->addWidget(bar);
    table_->set_model(rows_);
    all->addWidget(table_, 1);
    table_->set_empty_text(
        tr("No instrument is recorded: whether a reading's calibration held cannot be told."));
    connect(table_, &TableView::opened, this, &InstrumentsPart::open);
    connect(&session_, &Session::changed, this, &InstrumentsPart::show_stands);
    show_stands();
}

void InstrumentsPart::show_stands() {
    const Instant as_at = session_.figures_at();
    auto stands = instrument_stands(session_.book(), as_at);
    in_doubt_ = int(std::count_if(stands.begin(), stands.end(), [](const InstrumentStand& stand) {
        return stand.standing && stand.calibration != CalibrationState::valid;
    }));
    rows_->set_rows(std::move(stands));
    table_->table()->resizeColumnsToContents();
}

const InstrumentStand* InstrumentsPart::current() const {
    const int row = table_->current_row();
    return row < 0 ? nullptr : &rows_->row(row);
}

void InstrumentsPart::write(const Kind& kind, const char* prefix, const QString& title, const QString& words,
                            std::vector<LogColumn> columns) {
    const QString why = tr("the row that is chosen");
    const InstrumentStand* chosen = current();
    for (LogColumn& column : columns) {
        if (chosen != nullptr && column.name == "site") column.offered = Value(chosen->site);
        if (chosen != nullptr && column.name == "serial") column.offered = Value(chosen->row.serial);
        if (column.offered) column.offered_why = why;
        if (column.name != "by" || session_.person().isEmpty()) continue;
        column.offered = Value(session_.person().toStdString());
        column.offered_why = tr("who writes");
    }
    auto* page = new LogSheet(session_, kind, prefix, {}, std::move(columns));
    page->explain(words);
    connect(page, &LogSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(title, page, log_width);
}

void InstrumentsPart::deploy() {
    write(
        definition<Instrument>().kind(), "IN-", tr("An instrument at a site"),
        tr("One row for each time that a logger stands at a site. Readings after the end of its calibration "
           "are marked and told in the return; they are not taken away."),
        {{"site", tr("Site"), {}, {}, {}, tr("The site must be said.")},
         {"serial", tr("Serial number"), {}, {}, {}, tr("The serial number must be said.")},
         {"deployed", tr("Stands there from"), {}, {}, {}, tr("From when it stands there must be said.")},
         {"recovered", tr("Until just before"), tr("Blank: it still stands there.")},
         {"calibrated", tr("Calibrated"), tr("A day like 2026-04-28, or a time with its offset.")},
         {"calibrated_until", tr("Calibration holds until just before"),
          tr("A day like 2026-10-28. Blank: not recorded.")},
         {"by", tr("Calibrated by")},
         {"remarks", tr("Remarks")}});
}

void InstrumentsPart::calibrate() {
    write(definition<Instrument>().kind(), "IN-", tr("A calibration"),
          tr("A calibration of a logger that stands at this site, or will. The one before stays in the book, "
             "and "
             "holds for the readings before."),
          {{"site", tr("Site"), {}, {}, {}, tr("The site must be said.")},
           {"serial", tr("Serial number"), {}, {}, {}, tr("The serial number must be said.")},
           {"calibrated",
            tr("Calibrated"),
            tr("A day like 2026-04-28, or a time with its offset."),
            {},
            {},
            tr("When it was calibrated must be said.")},
           {"calibrated_until",
            tr("Holds until just before"),
            tr("A day like 2026-10-28."),
            {},
            {},
            tr("Until when it holds must be said.")},
           {"by", tr("By")},
           {"remarks", tr("Remarks")}});
}

void InstrumentsPart::serve() {
    write(definition<Service>().kind(), "SV-", tr("A service"),
          tr("What was done to a logger, and what it read before and after. It changes no reading and no "
             "flag."),
          {{"site", tr("Site"), {}, {}, {}, tr("The site must be said.")},
           {"serial", tr("Serial number")},
           {"time", tr("When"), {}, {}, {}, tr("When it was done must be said.")},
           {"what", tr("What was done"), {}, {}, {}, tr("What was done must be said.")},
           {"before", tr("Reading before"), tr("With its unit: 4.8 NTU")},
           {"after", tr("Reading after")}});
}

void InstrumentsPart::open(int row) {
    if (row < 0) return;
    const InstrumentStand stand = rows_->row(row);
    auto* page = new QWidget;
    auto* all = new QVBoxLayout(page);
    const InstrumentWord said = instrument_word(stand, session_.figures_at());
    auto* mark = new StateMark(said.state, page);
    mark->show_state(said.state, said.word);
    all->addWidget(mark, 0, Qt::AlignLeft);
    all->addWidget(make_label(tr("What was done to it"), Step::body, Weight::semibold, page));
    const QString services = services_of(session_.book(), stand, session_.zone());
    auto* list = make_label(services.isEmpty() ? tr("No service is recorded.") : services, Step::body,
                            Weight::regular, page);
    list->setWordWrap(true);
    list->setTextInteractionFlags(Qt::TextSelectableByMouse);
    all->addWidget(list);
    all->addWidget(new RecordSheet(session_, definition<Instrument>().kind(), stand.row.id, page));
    sheet_->open(tr("%1 at %2").arg(book_text(stand.row.serial), QString::fromStdString(stand.site)), page,
                 log_width);
}

}  // namespace spoilbook::form
