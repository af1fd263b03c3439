// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/duties_leaf.h"

#include <QHBoxLayout>
#include <QPointer>
#include <QVBoxLayout>

#include "forms/consent/done_sheet.h"
#include "forms/consent/duty_month.h"
#include "forms/consent/trigger_sheet.h"
#include "forms/consent/turbidity_source.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/save_file.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "model/answer/calendar_file.h"

namespace spoilbook::form {
namespace {

constexpr int abreast_from = 110 * grid;

struct Asked {
    std::vector<DutyRow> rows;
    QDate today;
    Refusals unread;
};

}  // namespace

DutiesLeaf::DutiesLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      table_(new TableView(tr("duties"), this)),
      rows_(new RowTable<DutyRow>(duty_columns(), this)),
      sheet_(new Sheet(this)) {
    build_head();
    auto* halves = new QWidget(this);
    halves_ = new QBoxLayout(QBoxLayout::LeftToRight, halves);
    halves_->setContentsMargins(0, 0, 0, 0);
    halves_->setSpacing(2 * grid);
    table_->set_model(rows_);
    table_->set_empty_text(tr("No condition of this book asks for anything by a day."));
    give_height(table_, 28);
    halves_->addWidget(table_, 1);
    halves_->addWidget(build_side());
    body()->addWidget(halves, 1);
    tell_exports_of(table_);
    connect(table_, &TableView::current_changed, this, &DutiesLeaf::show_duty);
    connect(table_, &TableView::opened, this, &DutiesLeaf::open_duty);
}

void DutiesLeaf::build_head() {
    sentence_->setWordWrap(true);
    auto* head = new QHBoxLayout;
    head->addWidget(sentence_, 1);
    auto* open = make_button(ButtonKind::primary, tr("Open this duty …"), QStringLiteral("check"), this);
    connect(open, &QPushButton::clicked, this, [this] { open_duty(table_->current_row()); });
    head->addWidget(open, 0, Qt::AlignTop);
    auto* calendar = make_button(ButtonKind::plain, tr("Calendar file …"), QStringLiteral("calendar"), this);
    calendar->setToolTip(tr("Every due time as a task for any calendar (iCalendar, RFC 5545)"));
    connect(calendar, &QPushButton::clicked, this, &DutiesLeaf::export_calendar);
    head->addWidget(calendar, 0, Qt::AlignTop);
    body()->addLayout(head);
}

QWidget* DutiesLeaf::build_side() {
    auto* side = new QWidget(this);
    auto* all = new QVBoxLayout(side);
    all->setContentsMargins(0, 0, 0, 0);
    month_ = new DutyMonth(side);
    all->addWidget(month_);
    name_ = make_label({}, Step::body, Weight::semibold, side);
    how_ = make_label({}, Step::body, Weight::regular, side);
    for (QLabel* label : {name_, how_}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        all->addWidget(label);
    }
    all->addStretch();
    side->setMaximumWidth(44 * grid);
    // The day that is chosen shows what is due on it.
    connect(month_, &QCalendarWidget::clicked, this, [this](QDate day) {
        name_->setText(QLocale().toString(day, QStringLiteral("d MMM yyyy")));
        const QString words = month_->words_of(day);
        how_->setText(words.isEmpty() ? tr("Nothing is due on this day.") : words);
    });
    return side;
}

// At a large scale the month lies below the list.
void DutiesLeaf::resizeEvent(QResizeEvent* event) {
    FiguresPage::resizeEvent(event);
    halves_->setDirection(width() >= abreast_from ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

void DutiesLeaf::show_figures(const FiguresMade&) {
    ask<Asked>(
        [](const Figures& f) {
            Asked asked;
            const auto times = duty_calendar(*f.ledger, f.as_at, &asked.unread);
            asked.rows = duty_rows(times, f.season.zone, f.as_at, QLocale());
            if (const auto book = Book::open_to_read(f.book)) {
                TurbidityWatch watch(*book, f.season, f.as_at);
                add_response_rows(asked.rows, response_times(watch, f.season, f.as_at), watch, f.season,
                                  f.as_at, QLocale());
            }
            const Day day = f.season.zone.day_of(f.as_at);
            asked.today = {day.year, day.month, day.day};
            return asked;
        },
        [this](Asked asked) {
            sentence_->setText(duties_sentence(asked.rows));
            month_->show_duties(asked.rows, asked.today);
            rows_->set_rows(std::move(asked.rows));
            table_->table()->resizeColumnsToContents();
            const auto* shown = table_->table()->model();
            if (table_->current_row() < 0 && shown->rowCount() > 0)
                table_->table()->setCurrentIndex(shown->index(0, 0));
            show_duty();
            if (!asked.unread.empty()) tell_problem(refusals_shown(asked.unread));
        });
}

void DutiesLeaf::show_duty() {
    const int place = table_->current_row();
    if (place < 0) return;
    const DutyRow& row = rows_->row(place);
    name_->setText(tr("Condition %1: %2").arg(row.condition, row.text));
    how_->setText(row.how);
    if (row.day.isValid()) month_->setSelectedDate(row.day);
}

void DutiesLeaf::open_duty(int place) {
    if (place < 0) return;
    const DutyRow row = rows_->row(place);
    if (row.trigger) return open_trigger(row);
    if (!row.can_be_done && row.done.is_nil())
        return tell_problem(tr("It has not arisen yet, or asks for nothing: %1").arg(row.how));
    auto* page = new DoneSheet(session(), row);
    connect(page, &DoneSheet::exported, this, &DutiesLeaf::tell_written);
    connect(page, &DoneSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(tr("Condition %1, %2").arg(row.condition, row.word), page, done_width);
}

/// A response is given where its trigger is answered.
void DutiesLeaf::open_trigger(const DutyRow& row) {
    QPointer<TriggerSheet> page = new TriggerSheet(session(), *row.trigger);
    connect(page, &TriggerSheet::written, sheet_, &Sheet::close_sheet);
    sheet_->open(tr("Condition %1 at %2").arg(row.condition, row.trigger->site), page, trigger_width);
    const auto book = std::make_shared<TurbidityBook>(figures(), std::string());
    off_screen<EvidenceAnswer>(
        pool(), this, [book, trigger = *row.trigger] { return book->evidence(trigger); },
        [page](const EvidenceAnswer& evidence) {
            if (page) page->show_evidence(evidence);
        });
}

void DutiesLeaf::export_calendar() {
    save_file(this, tr("Calendar file"), QStringLiteral("duties.ics"), tr("Calendars (*.ics)"),
              [this](const QString& path) {
                  ask<QString>(
                      [path](const Figures& f) {
                          const auto times = duty_calendar(*f.ledger, f.as_at);
                          const auto book = Book::open_to_read(f.book);
                          if (!book) return refusals_shown(book.refusals());
                          TurbidityWatch watch(*book, f.season, f.as_at);
                          const auto responses = response_times(watch, f.season, f.as_at);
                          return write_file(path, QByteArray::fromStdString(
                                                      calendar_file(times, responses, f.season, f.as_at)));
                      },
                      [this, path](const QString& why) {
                          if (why.isEmpty())
                              tell_written(path);
                          else
                              tell_problem(why);
                      });
              });
}

}  // namespace spoilbook::form
