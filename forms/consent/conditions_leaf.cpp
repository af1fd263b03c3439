// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/conditions_leaf.h"

#include <QFrame>
#include <QPointer>
#include <QVBoxLayout>

#include "forms/consent/condition_editor.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/evidence_ask.h"
#include "forms/works/say.h"
#include "model/answer/try_condition.h"

namespace spoilbook::form {

ConditionsLeaf::ConditionsLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      table_(new TableView(tr("conditions"), this)),
      rows_(new RowTable<ConditionRow>(condition_columns(QLocale()), this)),
      sheet_(new Sheet(this)),
      load_sheet_(new Sheet(this)) {
    auto* top = new QHBoxLayout;
    sentence_->setWordWrap(true);
    top->addWidget(sentence_, 1);
    auto* fresh = make_button(ButtonKind::plain, tr("New condition"), QStringLiteral("add"), this);
    top->addWidget(fresh, 0, Qt::AlignTop);
    body()->addLayout(top);
    table_->set_model(rows_);
    table_->set_empty_text(
        tr("No condition is in force yet.\nNew condition writes the first one; a book folder's "
           "consents.json brings all of a consent."));
    give_height(table_, 28);
    body()->addWidget(table_, 1);
    body()->addWidget(build_condition());
    tell_exports_of(table_);
    connect(table_, &TableView::current_changed, this, &ConditionsLeaf::show_condition);
    connect(table_, &TableView::opened, this, &ConditionsLeaf::show_evidence);
    connect(fresh, &QPushButton::clicked, this, [this] { open_editor(nullptr); });
    connect(&forecasts_, &ForecastSource::made, this, &ConditionsLeaf::show_rows);
}

QWidget* ConditionsLeaf::build_condition() {
    auto* card = new QFrame(this);
    card->setAutoFillBackground(true);
    card->setBackgroundRole(QPalette::AlternateBase);
    auto* all = new QVBoxLayout(card);
    all->setContentsMargins(2 * grid, grid + half_grid, 2 * grid, grid + half_grid);
    all->setSpacing(half_grid);
    auto* head = new QHBoxLayout;
    name_ = make_label({}, Step::strong, Weight::semibold, card);
    name_->setWordWrap(true);
    head->addWidget(name_, 1);
    behind_ = make_button(ButtonKind::plain, tr("What is behind it"), QStringLiteral("trip"), card);
    change_ = make_button(ButtonKind::plain, tr("Change this condition"), QStringLiteral("limit"), card);
    head->addWidget(behind_, 0, Qt::AlignTop);
    head->addWidget(change_, 0, Qt::AlignTop);
    all->addLayout(head);
    text_ = make_label({}, Step::body, Weight::regular, card);
    numbers_ = make_quiet({}, Step::body, card);
    notes_ = make_label({}, Step::body, Weight::regular, card);
    for (QLabel* label : {text_, numbers_, notes_}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        all->addWidget(label);
    }
    connect(behind_, &QPushButton::clicked, this, [this] { show_evidence(table_->current_row()); });
    connect(change_, &QPushButton::clicked, this, [this] {
        if (current()) open_editor(current()->condition);
    });
    return card;
}

const ConditionRow* ConditionsLeaf::current() const {
    const int index = table_->current_row();
    return index < 0 ? nullptr : &rows_->row(index);
}

void ConditionsLeaf::show_figures(const FiguresMade& made) {
    made_ = condition_rows(*made, QLocale());
    forecasts_.want(made, {});
    show_rows();
    judge_all();
    if (!made->unread.empty()) tell_problem(refusals_shown(made->unread));
}

void ConditionsLeaf::judge_all() {
    using Standings = std::map<Id, ConditionStanding>;
    ask<Standings>(
        [](const Figures& figures) -> Standings {
            const auto book = Book::open_to_read(figures.book);
            if (!book) return {};
            auto tracks = tracks_of(figures);
            return condition_standings(board(*book, *figures.ledger, tracks, figures.as_at),
                                       figures.season.zone, QLocale());
        },
        [this](const Standings& standings) {
            put_standings(made_, standings);
            show_rows();
        });
}

void ConditionsLeaf::show_rows() {
    const int before = table_->current_row();
    const auto& forecast = forecasts_.newest();
    if (forecast && forecast->figures == figures()) put_bites(made_, forecast->forecast, QLocale());
    sentence_->setText(conditions_sentence(made_));
    rows_->set_rows(made_);
    table_->table()->resizeColumnsToContents();
    const auto* shown = table_->shown_rows();
    const int row = before >= 0 && before < rows_->rowCount() ? before : 0;
    if (rows_->rowCount() > 0) table_->table()->setCurrentIndex(shown->mapFromSource(rows_->index(row, 0)));
    show_condition();
}

void ConditionsLeaf::show_condition() {
    const ConditionRow* row = current();
    behind_->setEnabled(row && (row->limit || row->standing));
    change_->setEnabled(row && session().writable());
    if (!row) {
        for (QLabel* label : {name_, text_, numbers_, notes_})
            label->clear();
        return;
    }
    name_->setText(tr("Condition %1: %2").arg(row->number, row->sentence));
    text_->setText(row->wording);
    text_->setVisible(!row->wording.isEmpty());
    QString numbers;
    if (row->limit) {
        numbers = tr("Counts %1, %2.").arg(row->limit->unit, row->limit->window);
        if (row->limit->used_share)
            numbers += u' ' + tr("%1 of the limit used.").arg(share_used(*row->limit->used_share, QLocale()));
        if (row->limit->first_over)
            numbers += u' ' + tr("First over on %1.").arg(row->limit->first_over_text);
    }
    if (row->standing) numbers = row->standing->summary;
    numbers_->setText(numbers);
    numbers_->setVisible(!numbers.isEmpty());
    notes_->setText(row->notes);
    notes_->setVisible(!row->notes.isEmpty());
}

void ConditionsLeaf::show_evidence(int index) {
    if (index < 0) return;
    const ConditionRow& row = rows_->row(index);
    if (row.standing) {
        sheet_->open(tr("Condition %1").arg(row.number),
                     standing_page(row.sentence, *row.standing, opens_loads(session(), load_sheet_), sheet_),
                     evidence_width);
        return;
    }
    if (!row.limit) return;
    const LimitRow limit = *rows_->row(index).limit;
    ask<std::vector<EvidenceRow>>(evidence_of(limit.place), [this, limit](std::vector<EvidenceRow> rows) {
        sheet_->open(
            tr("Condition %1").arg(limit.name),
            evidence_page(limit, std::move(rows), QLocale(), opens_loads(session(), load_sheet_), sheet_),
            evidence_width);
    });
}

void ConditionsLeaf::open_editor(const Condition* before) {
    auto* editor = new ConditionEditor(session(), before, sheet_);
    connect(editor, &ConditionEditor::trial_asked, this, [this, editor] { try_condition_of(editor); });
    connect(editor, &ConditionEditor::load_asked, this, opens_loads(session(), load_sheet_));
    connect(editor, &ConditionEditor::written, sheet_, &Sheet::close_sheet);
    sheet_->open(before ? tr("Condition %1: a new version").arg(QString::fromStdString(before->condition))
                        : tr("A new condition"),
                 editor, editor_width);
}

void ConditionsLeaf::try_condition_of(ConditionEditor* editor) {
    if (!figures()) return;
    const Condition candidate = editor->tried();
    const Instant from = editor->from();
    const Instant to = editor->to();
    // Of the figures as they are now, also where newer ones come meanwhile: what happened has not changed.
    off_screen<Trial>(
        pool(), this,
        [candidate, from, to, asked = figures()] {
            Trial trial;
            try {
                auto tracks = tracks_of(*asked);
                const auto book = Book::open_to_read(asked->book);
                trial =
                    try_condition(*asked->ledger, candidate, from, to, {&tracks, book ? &*book : nullptr});
            } catch (const std::exception& error) {
                trial.why_not = error.what();
            }
            return trial;
        },
        [editor = QPointer<ConditionEditor>(editor)](const Trial& trial) {
            if (editor) editor->show_trial(trial);
        });
}

}  // namespace spoilbook::form
