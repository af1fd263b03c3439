// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/spot_line.h"

#include <QHBoxLayout>
#include <QLabel>

#include "forms/barge/place_words.h"
#include "forms/shared/label.h"

namespace spoilbook::form {

SpotLine::SpotLine(BookSession& session, RecordForm& form, QWidget* parent)
    : QWidget(parent),
      session_(session),
      form_(form),
      mark_(new StateMark(State::unknown, this)),
      text_(make_label({}, Step::small, Weight::regular, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, half_grid, 0, half_grid);
    row->addWidget(mark_, 0, Qt::AlignTop);
    text_->setWordWrap(true);
    row->addWidget(text_, 1);
    for (const char* column : {"lat", "lon"})
        form_.set_odd(column, [this](double) { return odd_words(); });
    connect(&form_, &RecordForm::edited, this, &SpotLine::say);
    connect(&form_, &RecordForm::shown, this, &SpotLine::say);
    say();
}

void SpotLine::set_absent(const QString& why) {
    if (why == absent_) return;
    absent_ = why;
    say();
}

std::optional<Spot> SpotLine::spot() {
    const auto row = form_.typed_row();
    if (!row) return std::nullopt;
    if (!map_ || map_of_ != session_.writes_that_count()) {
        map_ = std::make_unique<GroundMap>(session_.season());
        map_of_ = session_.writes_that_count();
    }
    return spot_of_row(session_.season(), *map_, form_.kind(), *row);
}

QString SpotLine::odd_words() {
    const auto here = spot();
    return here ? odd_place_words(*here) : QString();
}

void SpotLine::say() {
    const auto here = spot();
    setVisible(here || !absent_.isEmpty());
    // What the other box mended needs no answer any more.
    for (const char* column : {"lat", "lon"}) {
        FieldBox* box = form_.box(column);
        if (here && !here->odd && box->asking()) box->ask({}, {});
    }
    const PlaceWords words =
        here ? spot_words(*here) : PlaceWords{State::attention, tr("no position"), absent_};
    if (mark_->state() != words.state || mark_->word() != words.word)
        mark_->show_state(words.state, words.word);
    if (text_->text() != words.text) text_->setText(words.text);
    setAccessibleName(tr("Position: %1, %2").arg(words.word, words.text));
}

}  // namespace spoilbook::form
