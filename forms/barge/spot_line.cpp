// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/spot_line.h"

#include <QGridLayout>
#include <QLabel>

#include "forms/barge/place_words.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"

namespace spoilbook::form {

SpotLine::SpotLine(BookSession& session, RecordForm& form, QWidget* parent)
    : QWidget(parent),
      session_(session),
      form_(form),
      mark_(new StateMark(State::unknown, this)),
      text_(make_label({}, Step::small, Weight::regular, this)),
      cell_mark_(new StateMark(State::unknown, this)),
      cell_text_(make_label({}, Step::small, Weight::regular, this)) {
    auto* rows = new QGridLayout(this);
    rows->setContentsMargins(0, half_grid, 0, half_grid);
    rows->setColumnStretch(1, 1);
    int row = 0;
    for (auto [mark, text] : {std::pair(mark_, text_), std::pair(cell_mark_, cell_text_)}) {
        text->setWordWrap(true);
        rows->addWidget(mark, row, 0, Qt::AlignTop | Qt::AlignLeft);
        rows->addWidget(text, row++, 1);
    }
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

void SpotLine::set_due_cell(const QString& cell) {
    if (cell == due_cell_) return;
    due_cell_ = cell;
    say();
}

const GroundMap& SpotLine::map() {
    if (!map_ || map_of_ != session_.writes_that_count()) {
        map_ = std::make_unique<GroundMap>(session_.season());
        map_of_ = session_.writes_that_count();
    }
    return *map_;
}

std::optional<Spot> SpotLine::spot() {
    const auto row = form_.typed_row();
    if (!row) return std::nullopt;
    return spot_of_row(session_.season(), map(), form_.kind(), *row);
}

// The trip's own cell is where she is bound for: what is due is offered there by who asks the release check.
void SpotLine::say_cell() {
    const auto row = form_.typed_row();
    const CellSaid said = row ? cell_said(session_.season(), map(), form_.kind(), *row) : CellSaid();
    const PlaceWords words = cell_words(said);
    cell_mark_->setVisible(!words.word.isEmpty());
    cell_text_->setVisible(!words.word.isEmpty());
    if (cell_mark_->state() != words.state || cell_mark_->word() != words.word)
        cell_mark_->show_state(words.state, words.word);
    if (cell_text_->text() != words.text) cell_text_->setText(words.text);
    auto* box = qobject_cast<ChoiceField*>(form_.box("cell"));
    if (!box || form_.kind().name != "release") return;
    const bool blank = said.says == CellSays::by_position || said.says == CellSays::no_cell;
    box->clear_offer();
    if (blank && !said.lies_in.empty())
        box->offer(QString::fromStdString(said.lies_in), tr("by its position"));
    else if (blank && !said.has_place && !due_cell_.isEmpty())
        box->offer(due_cell_, tr("due"));
}

QString SpotLine::odd_words() {
    const auto here = spot();
    return here ? odd_place_words(*here) : QString();
}

void SpotLine::say() {
    say_cell();
    const auto here = spot();
    const bool says_place = here || !absent_.isEmpty();
    mark_->setVisible(says_place);
    text_->setVisible(says_place);
    setVisible(says_place || !cell_text_->text().isEmpty());
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
    QString name = says_place ? tr("Position: %1, %2").arg(words.word, words.text) : QString();
    if (!cell_text_->text().isEmpty())
        name += (name.isEmpty() ? QString() : QStringLiteral(". ")) +
                tr("Cell: %1, %2").arg(cell_mark_->word(), cell_text_->text());
    setAccessibleName(name);
}

}  // namespace spoilbook::form
