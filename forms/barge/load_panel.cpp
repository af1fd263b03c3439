// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/load_panel.h"

#include <QLocale>

#include "forms/barge/desk_words.h"
#include "forms/barge/load_answer.h"
#include "forms/barge/press_button.h"
#include "forms/barge/record_form.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/time_typed.h"
#include "forms/shared/unit_field.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

// The barge that has waited longest: the one whose newest load is the oldest.
const Barge* longest_away(const Season& season) {
    const Barge* found = nullptr;
    std::size_t newest_of_found = season.loads.size();
    for (const Barge& barge : season.barges.rows()) {
        std::size_t newest = 0;
        for (std::size_t i = 0; i < season.loads.size(); ++i) {
            if (season.loads.rows()[i].barge == barge.id) newest = i + 1;
        }
        if (newest <= newest_of_found) {
            found = &barge;
            newest_of_found = newest;
        }
    }
    return found;
}

}  // namespace

LoadPanel::LoadPanel(ShiftHand& hand, QWidget* parent)
    : Panel(tr("Barge alongside"), QStringLiteral("barge"), parent),
      hand_(hand),
      choosing_(new QWidget(this)),
      form_(new RecordForm(hand.session(), kind("load"), this)),
      findings_(*form_) {
    build_alongside();
    build_tally();
    build_closing();
    build_answer();
    build_bucket();
    connect(form_, &RecordForm::written, this, &LoadPanel::refresh);
}

void LoadPanel::build_alongside() {
    // Below each other: with the barge that is offered, a row would be wider than a third of the page.
    auto* row = new QVBoxLayout(choosing_);
    row->setContentsMargins(0, 0, 0, 0);
    barge_ = new ChoiceField(tr("Barge"), choosing_);
    take_ = new PressButton(tr("Barge alongside"), QStringLiteral("barge"), Qt::Key_F4, choosing_);
    row->addWidget(barge_);
    row->addWidget(take_);
    body()->addWidget(choosing_);
    connect(barge_, &ChoiceField::committed, this, &LoadPanel::refresh);
    connect(take_, &QPushButton::clicked, this, [this] {
        for (const Barge& barge : hand_.season().barges.rows()) {
            if (shown(barge.name) == barge_->chosen()) return hand_.barge_alongside(barge);
        }
        barge_->show_problem(tr("Choose the barge first."));
    });
}

void LoadPanel::build_tally() {
    count_ = new PressButton(tr("One bucket"), QStringLiteral("bucket"), Qt::Key_F5, this);
    less_ = new PressButton({}, {}, Qt::SHIFT | Qt::Key_F5, this);
    less_->set_narrow(QStringLiteral("−1"), tr("One bucket less"));
    buckets_ = make_label({}, Step::figure, Weight::semibold, this);
    buckets_->setMinimumWidth(7 * grid);
    buckets_->setAlignment(Qt::AlignCenter);
    auto* row = new QHBoxLayout;
    row->addWidget(buckets_);
    row->addWidget(count_, 1);
    row->addWidget(less_);
    body()->addLayout(row);
    connect(count_, &QPushButton::clicked, this, [this] { hand_.count(1); });
    connect(less_, &QPushButton::clicked, this, [this] { hand_.count(-1); });
}

// What closes a load in the order of the work, all of it in sight at 1280 × 800.
void LoadPanel::build_closing() {
    form_->set_short_times();
    typed_ = new UnitField(tr("Tally at this station"), {tr("buckets"), 0, 100000, 0}, this);
    auto* boxes = form_grid();
    boxes->addWidget(typed_, 0, 0, Qt::AlignTop);
    boxes->addWidget(form_->add("dips_m", this, tr("Dips to the spoil")), 0, 1, Qt::AlignTop);
    boxes->addWidget(form_->add("loading_start", this), 1, 0, Qt::AlignTop);
    boxes->addWidget(form_->add("loading_end", this), 1, 1, Qt::AlignTop);
    body()->addLayout(boxes);
    full_ = new PressButton(tr("Full"), QStringLiteral("check"), Qt::Key_F6, this);
    ticket_ = new PressButton(tr("Ticket"), QStringLiteral("table"), Qt::SHIFT | Qt::Key_F6, this);
    ticket_->set_note(tr("all readings"));
    auto* presses = new QHBoxLayout;
    presses->setSpacing(grid);
    presses->addWidget(full_, 2);
    presses->addWidget(ticket_, 3);
    body()->addLayout(presses);
    connect(typed_, &UnitField::committed, this, [this](std::optional<double> count) {
        hand_.count(count.value_or(0) - hand_.counted_here(), true);
    });
    connect(full_, &QPushButton::clicked, this, [this] { hand_.full(); });
    connect(ticket_, &QPushButton::clicked, this, [this] {
        if (!form_->label().empty()) emit ticket_asked(shown(form_->label()));
    });
}

void LoadPanel::build_answer() {
    auto* answer = new QHBoxLayout;
    counts_ = make_label({}, Step::body, Weight::semibold, this);
    counts_->setWordWrap(true);
    mark_ = new StateMark(State::unknown, this);
    answer->addWidget(counts_, 1);
    answer->addWidget(mark_, 0, Qt::AlignTop);
    body()->addLayout(answer);
    beside_ = make_quiet({}, Step::small, this);
    beside_->setWordWrap(true);
    body()->addWidget(beside_);
}

void LoadPanel::build_bucket() {
    bucket_ = new ChoiceField(tr("Bucket"), this);
    body()->addWidget(bucket_);
    caution_ = make_quiet(tr("No figure of freeboard, stability or load line: her approved information and "
                             "her master prevail."),
                          Step::small, this);
    caution_->setWordWrap(true);
    body()->addWidget(caution_);
    body()->addStretch();
    connect(bucket_, &ChoiceField::committed, this, [this](const QString& name) {
        for (const Bucket& bucket : hand_.season().buckets.rows()) {
            if (shown(bucket.name) == name) hand_.choose_bucket(bucket.id);
        }
        refresh();
    });
}

void LoadPanel::refresh() {
    const Running now = hand_.now_running();
    form_->set_after(now.shift ? now.shift->start : std::nullopt);
    form_->show(now.load ? now.load->load : std::string());
    show_barges(now);
    show_tally(now);
    show_answer(now);
}

void LoadPanel::show_barges(const Running& now) {
    const bool waiting = now.load && now.load->loading_end;
    choosing_->setVisible(!now.load || waiting);
    full_->setVisible(now.load && !waiting);
    full_->set_due(now.load && now.load->loading_start);
    ticket_->setVisible(now.load != nullptr);
    std::vector<Choice> choices;
    for (const Barge& barge : hand_.season().barges.rows())
        choices.push_back({shown(barge.name), shown(barge.name)});
    barge_->set_choices(choices);
    const Barge* next = longest_away(hand_.season());
    if (next && !barge_->chosen())
        barge_->offer(shown(next->name), tr("away longest"));
    else
        barge_->clear_offer();
    take_->set_due(!now.load);
    take_->set_note(barge_->chosen() ? *barge_->chosen() : tr("choose the barge"));
    if (!now.load) return set_state(tr("none"));
    const Barge* barge = hand_.season().barges.find(now.load->barge);
    const QString name = barge ? shown(barge->name) : tr("barge not recorded");
    set_state(waiting ? tr("%1, %2, full").arg(shown(now.load->load), name)
                      : tr("%1, %2").arg(shown(now.load->load), name));
}

void LoadPanel::show_tally(const Running& now) {
    const bool can = now.shift && now.station && now.load && hand_.session().writable();
    count_->setEnabled(can);
    less_->setEnabled(can && hand_.counted_here() > 0);
    typed_->setEnabled(can);
    count_->set_note(now.load && !now.station ? tr("spuds are up: no station to count at") : QString());
    const double here = hand_.counted_here();
    if (typed_->value().value_or(0) != here) typed_->set_value(here);
    const double all = now.load ? buckets_in(hand_.season(), *now.load) : 0;
    buckets_->setText(now.load ? QLocale().toString(all, 'f', 0) : QStringLiteral("–"));
    buckets_->setAccessibleName(tr("Buckets in the load: %1").arg(buckets_->text()));
    std::vector<Choice> choices;
    for (const Bucket& bucket : hand_.season().buckets.rows()) {
        if (!now.shift || bucket.dredger == now.shift->dredger)
            choices.push_back({shown(bucket.name), shown(bucket.name)});
    }
    bucket_->set_choices(choices);
    const Bucket* counted = hand_.season().buckets.find(hand_.bucket());
    bucket_->set_chosen(counted ? std::optional(shown(counted->name)) : std::nullopt);
}

void LoadPanel::show_answer(const Running& now) {
    Sources sources;
    const LoadIndex index(hand_.season(), sources);
    const LoadAnswer answer = now.load ? load_answer(index, *now.load) : LoadAnswer();
    if (now.load) {
        const Barge* barge = hand_.season().barges.find(now.load->barge);
        findings_.show(reading_findings(index, *now.load, figures(index, *now.load)),
                       barge ? shown(barge->name) : tr("the barge"));
    }
    counts_->setText(answer.counts.isEmpty() ? tr("Nothing is known of how much is in her yet.")
                                             : tr("%1, %2").arg(answer.counts, answer.by));
    mark_->setVisible(!answer.counts.isEmpty());
    mark_->show_state(answer.state, answer.word);
    beside_->setText(answer.beside);
    beside_->setVisible(!answer.beside.isEmpty());
}

}  // namespace spoilbook::form
