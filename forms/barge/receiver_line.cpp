// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/receiver_line.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "forms/barge/place_words.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"

namespace spoilbook::form {

ReceiverLine::ReceiverLine(BookSession& session, Receiver& receiver, QWidget* parent)
    : QWidget(parent),
      session_(session),
      receiver_(receiver),
      mark_(new StateMark(State::unknown, this)),
      state_(make_label({}, Step::small, Weight::regular, this)),
      where_(make_label({}, Step::body, Weight::semibold, this)),
      cell_way_(make_quiet({}, Step::small, this)) {
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(2);
    auto* head = new QHBoxLayout;
    head->addWidget(mark_);
    head->addWidget(state_, 1);
    head->setSpacing(grid);
    auto* set_up = make_button(ButtonKind::quiet, tr("Receiver …"), {}, this);
    set_up->setMinimumHeight(finger);
    head->addWidget(set_up);
    rows->addLayout(head);
    rows->addWidget(where_);
    rows->addWidget(cell_way_);
    for (QLabel* line : {state_, where_, cell_way_})
        line->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    state_->setWordWrap(true);  // two lines are no higher than the button beside them
    connect(set_up, &QPushButton::clicked, this, &ReceiverLine::set_up_asked);
    connect(&receiver_, &Receiver::changed, this, &ReceiverLine::say);
    connect(&session_, &Session::changed, this, [this] { said_.reset(); });
    connect(&second_, &QTimer::timeout, this, &ReceiverLine::say);
    second_.setInterval(int(ms_per_second));
    say();
}

void ReceiverLine::follow(const Id& trip) {
    if (trip == trip_) return;
    trip_ = trip;
    said_.reset();
    say();
}

void ReceiverLine::set_bound_for(const Id& cell) {
    if (cell == cell_) return;
    cell_ = cell;
    said_.reset();
    say();
}

void ReceiverLine::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    say();
    second_.start();
}

void ReceiverLine::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    second_.stop();
}

void ReceiverLine::put(QLabel* line, const QString& text, const QString& tip) {
    if (line->text() != text) line->setText(text);
    if (line->toolTip() != tip) line->setToolTip(tip);
}

void ReceiverLine::say() {
    const PlaceWords words = receiver_words(receiver_);
    if (mark_->state() != words.state || mark_->word() != words.word)
        mark_->show_state(words.state, words.word);
    put(state_, words.text, words.text);
    setAccessibleName(tr("Receiver: %1, %2").arg(words.word, words.text));
    say_where();
}

// Worked out where the fix is another: the words of a second before still hold.
void ReceiverLine::say_where() {
    const Trip* trip = session_.season().trips.find(trip_);
    const auto live = receiver_.fresh();
    where_->setVisible(trip && receiver_.state() != ReceiverState::off);
    cell_way_->setVisible(where_->isVisibleTo(this));
    if (!trip || !live) {
        said_.reset();
        put(where_, tr("Where she is, is not known."), {});
        return put(cell_way_, {}, {});
    }
    if (said_ == live->fix || !isVisible()) return;
    said_ = live->fix;
    if (!map_ || map_of_ != session_.writes_that_count()) {
        map_ = std::make_unique<GroundMap>(session_.season());
        map_of_ = session_.writes_that_count();
    }
    const auto now = hopper_now(session_.season(), *map_, *trip, receiver_.fixes(), live->u_m,
                                receiver_.settings().stands_on.toStdString(), cell_);
    if (!now) return put(where_, tr("The book's map does not hold this place."), {});
    const QString where = hopper_words(*now);
    const QString why_not = QString::fromStdString(now->why_not);
    put(where_, where, why_not.isEmpty() ? where : tr("%1; not the hopper's: %2").arg(where, why_not));
    put(cell_way_, why_not.isEmpty() ? cell_way_words(*now) : tr("Not the hopper's: %1").arg(why_not),
        tr("For the record, not for navigation."));
    setAccessibleDescription(where_->text());
}

}  // namespace spoilbook::form
