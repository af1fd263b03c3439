// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/method_lines.h"

#include <QBoxLayout>

#include "forms/shared/label.h"

namespace spoilbook::form {

MethodLines::MethodLines(QWidget* parent)
    : QWidget(parent),
      none_(make_quiet(tr("No reading of her yet: dips, draughts or a tally."), Step::body, this)) {
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(grid + half_grid);
    none_->setWordWrap(true);
    rows->addWidget(none_);
    for (Line& line : lines_) {
        line.all = new QWidget(this);
        auto* words = new QVBoxLayout(line.all);
        words->setContentsMargins(0, 0, 0, 0);
        words->setSpacing(2);
        line.name = make_label({}, Step::body, Weight::semibold, line.all);
        line.mark = new StateMark(State::unknown, line.all);
        line.amounts = make_label({}, Step::body, Weight::regular, line.all);
        line.amounts->setWordWrap(true);
        auto* head = new QHBoxLayout;
        head->addWidget(line.name);
        head->addStretch();
        head->addWidget(line.mark);
        words->addLayout(head);
        words->addWidget(line.amounts);
        rows->addWidget(line.all);
        line.all->hide();
    }
}

void MethodLines::show_answer(const LoadAnswer& answer) {
    none_->setVisible(answer.methods.empty());
    for (std::size_t i = 0; i < most; ++i) {
        Line& line = lines_[i];
        const bool used = i < answer.methods.size();
        line.all->setVisible(used);
        if (!used) continue;
        const MethodSaid& method = answer.methods[i];
        line.name->setText(method.name);
        line.mark->show_state(method.state, method.word);
        line.amounts->setText(method.amounts);
        line.amounts->setAccessibleName(tr("%1, %2: %3").arg(method.name, method.word, method.amounts));
    }
}

}  // namespace spoilbook::form
