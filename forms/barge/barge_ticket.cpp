// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/barge_ticket.h"

#include <QBoxLayout>

#include "forms/barge/draughts_field.h"
#include "forms/barge/method_lines.h"
#include "forms/barge/panel.h"
#include "forms/barge/press_button.h"
#include "forms/shared/label.h"

namespace spoilbook::form {
namespace {

/// Narrower than this the answer lies below the readings, and the two draughts below each other.
constexpr int abreast_from = 84 * grid;
constexpr int draughts_abreast_from = 56 * grid;

}  // namespace

BargeTicket::BargeTicket(ShiftHand& hand, std::string load, WaitingMarks& waiting, QWidget* parent)
    : QWidget(parent),
      hand_(hand),
      label_(std::move(load)),
      waiting_(waiting),
      form_(new RecordForm(hand.session(), kind("load"), this)),
      findings_(*form_),
      halves_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      readings_of_draughts_(new QBoxLayout(QBoxLayout::LeftToRight)) {
    halves_->setSpacing(3 * grid);
    halves_->addWidget(build_readings(), 5);
    halves_->addWidget(build_answer(), 3);
    form_->set_short_times();
    connect(form_, &RecordForm::edited, this, [this] {
        keep_waiting();
        show_typed();
    });
    connect(form_, &RecordForm::written, this, &BargeTicket::show_findings);
    connect(&hand.session(), &Session::changed, this, &BargeTicket::refresh);
    refresh();
    for (std::size_t i = 0; i < marks_.size(); ++i) {
        const auto waits = waiting_.find(label_ + "/" + marks_of_[i]);
        if (waits != waiting_.end()) marks_[i]->set_texts(waits->second);
    }
    show_typed();
}

// Written down with each key: a sheet may go at any moment.
void BargeTicket::keep_waiting() {
    for (std::size_t i = 0; i < marks_.size(); ++i) {
        const std::string key = label_ + "/" + marks_of_[i];
        if (marks_[i]->typed_marks())
            waiting_.erase(key);
        else
            waiting_[key] = marks_[i]->texts();
    }
}

QWidget* BargeTicket::build_readings() {
    auto* part = new QWidget(this);
    auto* rows = new QVBoxLayout(part);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(grid);
    auto* dips = form_->add("dips_m", part);
    dips->set_hint(tr("As on the ticket, a space between: 0.36 0.38 0.30 0.31"));
    rows->addWidget(dips);
    auto* top = form_grid();
    top->addWidget(form_->add("top_dips_m", part), 0, 0, Qt::AlignTop);
    top->addWidget(form_->add("water_on_top_m", part), 0, 1, Qt::AlignTop);
    rows->addLayout(top);
    rows->addWidget(build_draughts());
    auto* rest = form_grid();
    int at = 0;
    for (const char* column : {"light_density_t_m3", "dock_density_t_m3", "left_before_m3", "overflow",
                               "stated_hopper_m3", "stated_how", "material", "rejected"}) {
        rest->addWidget(form_->add(column, part), at / 2, at % 2, Qt::AlignTop);
        ++at;
    }
    rows->addLayout(rest);
    rows->addStretch();
    return part;
}

QWidget* BargeTicket::build_draughts() {
    auto* part = new QWidget(this);
    readings_of_draughts_->setContentsMargins(0, 0, 0, 0);
    readings_of_draughts_->setSpacing(2 * grid);
    part->setLayout(readings_of_draughts_);
    for (const char* column : {"light_draughts_m", "full_draughts_m"}) {
        auto* marks = qobject_cast<DraughtsField*>(form_->add(column, part));
        readings_of_draughts_->addWidget(marks, 1, Qt::AlignTop);
        marks_.push_back(marks);
        marks_of_.emplace_back(column);
    }
    return part;
}

QWidget* BargeTicket::build_answer() {
    auto* part = new QWidget(this);
    auto* rows = new QVBoxLayout(part);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(grid + half_grid);
    counts_ = make_label({}, Step::strong, Weight::semibold, part);
    counts_->setWordWrap(true);
    rows->addWidget(counts_);
    mark_ = new StateMark(State::unknown, part);
    rows->addWidget(mark_, 0, Qt::AlignLeft);
    lines_ = new MethodLines(part);
    rows->addWidget(lines_);
    full_ = new PressButton(tr("Full"), QStringLiteral("check"), Qt::Key_F6, part);
    rows->addWidget(full_);
    connect(full_, &QPushButton::clicked, this, [this] { hand_.full(); });
    auto* times = form_grid();
    times->addWidget(form_->add("loading_start", part), 0, 0, Qt::AlignTop);
    times->addWidget(form_->add("loading_end", part), 0, 1, Qt::AlignTop);
    rows->addLayout(times);
    auto* caution =
        make_quiet(tr("Draughts and dips are read here for the amount alone. This is no figure of "
                      "freeboard, stability or load line: her approved information and her master "
                      "prevail."),
                   Step::small, part);
    caution->setWordWrap(true);
    rows->addWidget(caution);
    rows->addStretch();
    return part;
}

void BargeTicket::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    halves_->setDirection(width() >= abreast_from ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    readings_of_draughts_->setDirection(width() >= draughts_abreast_from ? QBoxLayout::LeftToRight
                                                                         : QBoxLayout::TopToBottom);
}

const Load* BargeTicket::load() const {
    for (const Load& one : hand_.season().loads.rows()) {
        if (one.load == label_) return &one;
    }
    return nullptr;
}

QString BargeTicket::barge_name() const {
    const Load* held = load();
    const Barge* barge = held ? hand_.season().barges.find(held->barge) : nullptr;
    return barge ? QString::fromStdString(barge->name) : tr("the barge");
}

void BargeTicket::refresh() {
    const Running now = hand_.now_running();
    sources_ = std::make_unique<Sources>();
    index_ = std::make_unique<LoadIndex>(hand_.season(), *sources_);
    form_->set_after(now.shift ? now.shift->start : std::nullopt);
    form_->show(label_);
    const Load* held = load();
    if (!held) return;
    full_->setVisible(!held->loading_end);
    full_->setEnabled(now.load && now.load->load == label_ && hand_.session().writable());
    full_->set_due(held->loading_start.has_value());
    show_findings();
    show_typed();
}

void BargeTicket::show_findings() {
    const Load* held = load();
    if (!held || !index_) return;
    findings_.show(reading_findings(*index_, *held, figures(*index_, *held)), barge_name());
}

// The season stays the book's; what is typed stands in a copy of one load.
void BargeTicket::show_typed() {
    const auto row = form_->typed_row();
    if (!row || !index_) return;
    const LoadAnswer answer = load_answer(*index_, definition<Load>().read(*row));
    counts_->setText(answer.counts.isEmpty() ? tr("Nothing is known of how much is in her yet.")
                                             : tr("%1, %2").arg(answer.counts, answer.by));
    mark_->setVisible(!answer.counts.isEmpty());
    mark_->show_state(answer.state, answer.word);
    lines_->show_answer(answer);
}

}  // namespace spoilbook::form
