// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/limits_leaf.h"

#include <QFrame>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/sheet.h"
#include "forms/shared/table_view.h"
#include "forms/works/evidence_ask.h"
#include "forms/works/limits_table.h"
#include "forms/works/say.h"

namespace spoilbook::form {

QString limits_sentence(const std::vector<LimitState>& states) {
    const auto count = [&states](LimitStanding standing) {
        return int(std::count_if(states.begin(), states.end(),
                                 [standing](const LimitState& s) { return standing_of(s) == standing; }));
    };
    QStringList parts;
    const auto say = [&parts](int n, const QString& words) {
        if (n > 0) parts << words.arg(n);
    };
    say(count(LimitStanding::over), LimitsLeaf::tr("%1 over"));
    say(count(LimitStanding::cannot_tell), LimitsLeaf::tr("%1 that cannot be told"));
    say(count(LimitStanding::was_over), LimitsLeaf::tr("%1 that was over before"));
    say(count(LimitStanding::warned), LimitsLeaf::tr("%1 past a warning"));
    say(count(LimitStanding::below), LimitsLeaf::tr("%1 not reached yet"));
    say(count(LimitStanding::within), LimitsLeaf::tr("%1 within"));
    say(count(LimitStanding::no_limit), LimitsLeaf::tr("%1 without a limit yet"));
    if (parts.isEmpty()) return LimitsLeaf::tr("No condition of this book is a limit on a quantity.");
    return LimitsLeaf::tr("Limits: %1.").arg(parts.join(QStringLiteral(", ")));
}

LimitsLeaf::LimitsLeaf(FiguresSource& source, QWidget* parent)
    : FiguresPage(source, parent),
      sentence_(make_label({}, Step::strong, Weight::regular, this)),
      limits_(new LimitsTable(this)),
      sheet_(new Sheet(this)),
      load_sheet_(new Sheet(this)) {
    sentence_->setWordWrap(true);
    body()->addWidget(sentence_);
    give_height(limits_, 28);
    body()->addWidget(limits_, 1);
    body()->addWidget(build_condition());
    tell_exports_of(limits_->view());
    connect(limits_, &LimitsTable::current_changed, this, &LimitsLeaf::show_condition);
    connect(limits_, &LimitsTable::evidence_asked, this, &LimitsLeaf::show_evidence);
}

QWidget* LimitsLeaf::build_condition() {
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
    auto* behind =
        make_button(ButtonKind::plain, tr("Trips behind this number"), QStringLiteral("trip"), card);
    connect(behind, &QPushButton::clicked, this, [this] {
        if (limits_->view()->current_row() >= 0) show_evidence(limits_->view()->current_row());
    });
    head->addWidget(behind, 0, Qt::AlignTop);
    all->addLayout(head);
    text_ = make_label({}, Step::body, Weight::regular, card);
    numbers_ = make_quiet({}, Step::body, card);
    question_ = make_label({}, Step::body, Weight::regular, card);
    for (QLabel* label : {text_, numbers_, question_}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        all->addWidget(label);
    }
    return card;
}

void LimitsLeaf::show_figures(const FiguresMade& made) {
    sentence_->setText(limits_sentence(made->limits));
    limits_->show_rows(limit_rows(made->limits, made->season.zone, QLocale()));
    const auto* shown = limits_->view()->table()->model();
    if (!limits_->current() && shown->rowCount() > 0)
        limits_->view()->table()->setCurrentIndex(shown->index(0, 0));
    show_condition();
    if (!made->unread.empty()) tell_problem(refusals_shown(made->unread));
}

void LimitsLeaf::show_condition() {
    const LimitRow* row = limits_->current();
    if (!row) return;
    const QLocale locale;
    name_->setText(tr("Condition %1: %2").arg(row->name, row->text));
    text_->setText(row->wording);
    text_->setVisible(!row->wording.isEmpty());
    QString numbers = tr("Counts %1, %2.").arg(row->unit, row->window);
    if (row->used_share)
        numbers += u' ' + tr("%1 of the limit used.").arg(share_used(*row->used_share, locale));
    if (row->first_over) numbers += u' ' + tr("First over on %1.").arg(row->first_over_text);
    numbers_->setText(numbers);
    QString question =
        row->open_question.isEmpty() ? QString() : tr("Open question: %1").arg(row->open_question);
    if (!row->settled.isEmpty()) question += u' ' + tr("Settled: %1.").arg(row->settled);
    question_->setText(question);
    question_->setVisible(!question.isEmpty());
}

void LimitsLeaf::show_evidence(int index) {
    const LimitRow limit = limits_->row(index);
    ask<std::vector<EvidenceRow>>(evidence_of(limit.place), [this, limit](std::vector<EvidenceRow> rows) {
        sheet_->open(
            tr("Condition %1").arg(limit.name),
            evidence_page(limit, std::move(rows), QLocale(), opens_loads(session(), load_sheet_), sheet_),
            evidence_width);
    });
}

}  // namespace spoilbook::form
