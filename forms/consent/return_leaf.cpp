// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/return_leaf.h"

#include <QHBoxLayout>
#include <QTabBar>
#include <QTabWidget>
#include <QVBoxLayout>

#include "forms/print/write_return.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/message_strip.h"
#include "forms/shared/save_file.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/evidence_ask.h"
#include "forms/works/figure_row.h"
#include "forms/works/say.h"
#include "model/answer/standing.h"

namespace spoilbook::form {
namespace {

struct MonthAsked {
    std::string month, person;
};

// A reader of its own: one book is one thread's. What it says is read out before it is closed.
Checked<ReturnFacts> gathered(const MonthAsked& asked, const Figures& f) {
    auto tracks = tracks_of(f);
    const auto book = Book::open_to_read(f.book);
    if (!book) return book.refusals();
    return gather_return(*book, *f.ledger,
                         {asked.month, f.as_at, f.journal_head, asked.person, f.import_stamps_ms, &tracks});
}

// Empty: written; otherwise why not.
QString written(const Figures& f, const MonthAsked& asked, const std::string& folder) {
    try {
        const auto facts = gathered(asked, f);
        if (!facts) return refusals_shown(facts.refusals());
        const auto done = print::write_return(*facts, folder);
        return done ? QString() : refusals_shown(done.refusals());
    } catch (const std::exception& error) {
        return QString::fromUtf8(error.what());
    }
}

}  // namespace

ReturnLeaf::ReturnLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sheet_(new Sheet(this)),
      load_sheet_(new Sheet(this)),
      missing_rows_(new RowTable<MissingRow>(missing_columns(), this)),
      total_rows_(new RowTable<TotalRow>(total_columns(QLocale()), this)),
      schedule_rows_(new RowTable<ScheduleRow>(schedule_columns(QLocale()), this)),
      judged_rows_(new RowTable<JudgedRow>(judged_columns(QLocale()), this)),
      trigger_rows_(new RowTable<AnsweredRow>(answered_columns(QLocale()), this)),
      water_rows_(new RowTable<WaterRow>(water_columns(QLocale()), this)) {
    build_head();
    build_answer();
    build_tables();
    show_gathering();
}

void ReturnLeaf::build_head() {
    month_ = new ChoiceField(tr("Month"), this);
    month_->setMaximumWidth(28 * grid);
    make_ = make_button(ButtonKind::primary, tr("Make the return …"), QStringLiteral("return"), this);
    make_->setEnabled(false);
    mark_ = new StateMark(State::unknown, this);
    answer_ = make_label({}, Step::strong, Weight::semibold, this);
    answer_->setWordWrap(true);
    auto* head = new QHBoxLayout;
    head->setSpacing(3 * grid);
    head->addWidget(month_);
    head->addWidget(mark_, 0, Qt::AlignBottom);
    head->addStretch();
    head->addWidget(make_, 0, Qt::AlignBottom);
    body()->addLayout(head);
    // Below, not beside: at twice the scale a line between mark and press is one word wide.
    body()->addWidget(answer_);
    connect(month_, &ChoiceField::committed, this, &ReturnLeaf::gather);
    connect(make_, &QPushButton::clicked, this, &ReturnLeaf::make_return);
}

void ReturnLeaf::build_answer() {
    reasons_ = make_label({}, Step::body, Weight::regular, this);
    reasons_->setWordWrap(true);
    body()->addWidget(reasons_);
    auto* row = new FigureRow(this);
    in_situ_ = row->add();
    hopper_ = row->add();
    releases_ = row->add();
    late_ = row->add();
    body()->addWidget(row);
}

void ReturnLeaf::build_tables() {
    tabs_ = new QTabWidget(this);
    tabs_->setDocumentMode(true);
    tabs_->tabBar()->setAccessibleName(tr("Parts of the return"));
    missing_ = new TableView(tr("what is missing"), this);
    totals_ = new TableView(tr("totals"), this);
    schedule_ = new TableView(tr("schedule"), this);
    missing_->set_model(missing_rows_);
    totals_->set_model(total_rows_);
    schedule_->set_model(schedule_rows_);
    schedule_->set_empty_text(tr("No release in this month: the return says so."));
    tabs_->addTab(missing_, tr("Missing"));
    tabs_->addTab(totals_, tr("Totals"));
    tabs_->addTab(schedule_, tr("Schedule"));
    judged_ = new TableView(tr("conditions held against what was done"), this);
    judged_->set_model(judged_rows_);
    judged_->set_empty_text(tr("No condition fell to a release, trip or load of this month."));
    tabs_->addTab(judged_, tr("Conditions"));
    connect(judged_, &TableView::opened, this, &ReturnLeaf::show_failed);
    triggers_ = new TableView(tr("triggers passed"), this);
    water_ = new TableView(tr("turbidity by site"), this);
    triggers_->set_model(trigger_rows_);
    triggers_->set_empty_text(tr("No turbidity trigger was passed in this month."));
    water_->set_model(water_rows_);
    water_->set_empty_text(tr("No turbidity site is in the book."));
    tabs_->addTab(triggers_, tr("Triggers"));
    tabs_->addTab(water_, tr("Turbidity"));
    give_height(tabs_, 30);
    body()->addWidget(tabs_, 1);
    for (TableView* view : {missing_, totals_, schedule_, judged_, triggers_, water_})
        tell_exports_of(view);
}

void ReturnLeaf::show_figures(const FiguresMade& made) {
    std::vector<Choice> choices;
    for (const std::string& month : months_until(*made->ledger, made->as_at))
        choices.push_back({QString::fromStdString(month), month_shown(month, QLocale())});
    month_->set_choices(choices);
    // The month that runs cannot be returned yet: the one before it is what is asked for.
    if (!month_->chosen() && !choices.empty()) month_->set_chosen(choices[choices.size() > 1 ? 1 : 0].key);
    gather();
}

void ReturnLeaf::gather() {
    if (!figures() || !month_->chosen()) return;
    const std::string month = month_->chosen()->toStdString();
    const std::string person = session().person().toStdString();
    if (month != shown_month_) show_gathering();
    ask<ReturnShown>(
        [month, person](const Figures& f) {
            const auto facts = gathered({month, person}, f);
            if (facts) return return_shown(*facts, QLocale());
            ReturnShown none;
            none.problem = refusals_shown(facts.refusals());
            return none;
        },
        [this, month](ReturnShown shown) {
            if (month_->chosen()->toStdString() != month) return;
            shown_month_ = month;
            show_return(std::move(shown));
        });
}

/// Until the month is gathered nothing is said of it: what another month lacked is not this one's.
void ReturnLeaf::show_gathering() {
    mark_->show_state(State::unknown, tr("being gathered …"));
    missing_->set_empty_text(tr("What is missing is being looked for …"));
    make_->setEnabled(false);
}

void ReturnLeaf::show_return(ReturnShown shown) {
    if (!shown.problem.isEmpty()) {
        mark_->show_state(State::unknown, tr("cannot tell"));
        return tell_problem(shown.problem);
    }
    missing_->set_empty_text(tr("Nothing is missing."));
    const bool whole = shown.missing.empty();
    whole_ = whole;
    mark_->show_state(whole ? State::clear : State::hold, whole ? tr("complete") : tr("not complete"));
    answer_->setText(
        whole ? tr("Nothing is missing from the return for %1.").arg(shown.period)
              : tr("Missing from the return for %1: %2.").arg(shown.period).arg(shown.missing.size()));
    make_->setEnabled(whole && !making_);
    make_->setToolTip(whole ? QString() : tr("What is missing must be mended first."));
    QString words = shown.reasons.isEmpty()
                        ? tr("By these records nothing that is judged here stands against compliance.")
                        : tr("It cannot be stated that everything complied:") + QStringLiteral("\n•  ") +
                              shown.reasons.join(QStringLiteral("\n•  "));
    if (!shown.not_judged.isEmpty()) {
        words += u'\n' + tr("Not judged by this return, and to be answered beside it: %1.")
                             .arg(shown.not_judged.join(QStringLiteral("; ")));
    }
    reasons_->setText(words);
    in_situ_->show_figure(shown.in_situ);
    hopper_->show_figure(shown.hopper);
    releases_->show_figure(shown.releases);
    late_->show_figure(shown.late);
    tabs_->setTabText(0, tr("Missing: %1").arg(shown.missing.size()));
    missing_rows_->set_rows(std::move(shown.missing));
    total_rows_->set_rows(std::move(shown.totals));
    schedule_rows_->set_rows(std::move(shown.schedule));
    judged_rows_->set_rows(std::move(shown.judged));
    trigger_rows_->set_rows(std::move(shown.triggers));
    water_rows_->set_rows(std::move(shown.water));
    for (TableView* view : {missing_, totals_, schedule_, judged_, triggers_, water_})
        view->table()->resizeColumnsToContents();
}

void ReturnLeaf::show_failed(int row) {
    const JudgedRow& judged = judged_rows_->row(row);
    sheet_->open(tr("Condition %1").arg(judged.condition),
                 standing_page(judged.text, judged.failed, opens_loads(session(), load_sheet_), sheet_),
                 evidence_width);
}

void ReturnLeaf::make_return() {
    if (!month_->chosen()) return;
    const QString name = tr("return-%1").arg(*month_->chosen());
    choose_folder(this, tr("Where shall the return lie? The folder %1 is made there").arg(name),
                  [this, name](const QString& folder) { write_to(folder_of_its_own(folder, name)); });
}

void ReturnLeaf::write_to(const QString& folder) {
    const FiguresMade made = figures();
    if (!made || !month_->chosen() || making_) return;
    const MonthAsked asked{month_->chosen()->toStdString(), session().person().toStdString()};
    making_ = true;
    make_->setEnabled(false);
    // Not by ask(): whether a return was written is told also where the book changed meanwhile.
    off_screen<QString>(
        pool(), this, [made, asked, to = folder.toStdString()] { return written(*made, asked, to); },
        [this, folder](const QString& why) {
            making_ = false;
            make_->setEnabled(whole_);
            if (why.isEmpty()) return tell_written(folder);
            tell_problem(tr("No return was made: %1").arg(why));
        });
}

}  // namespace spoilbook::form
