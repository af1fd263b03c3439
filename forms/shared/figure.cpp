// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/figure.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include "forms/shared/label.h"

namespace spoilbook::form {

Figure::Figure(QWidget* parent)
    : QWidget(parent),
      caption_(make_quiet({}, Step::body, this)),
      value_(make_label({}, Step::figure, Weight::semibold, this)),
      unit_(make_label({}, Step::strong, Weight::regular, this)),
      plus_minus_(make_quiet({}, Step::strong, this)),
      basis_(make_quiet({}, Step::small, this)),
      mark_(new StateMark(State::unknown, this)) {
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    all->addWidget(caption_);
    auto* numbers = new QHBoxLayout;
    numbers->setSpacing(half_grid + 2);
    numbers->addWidget(value_, 0, Qt::AlignBaseline);
    numbers->addWidget(unit_, 0, Qt::AlignBaseline);
    numbers->addWidget(plus_minus_, 0, Qt::AlignBaseline);
    numbers->addStretch();
    all->addLayout(numbers);
    all->addWidget(basis_);
    all->addSpacing(half_grid);
    all->addWidget(mark_);
    mark_->hide();
    setFocusPolicy(Qt::NoFocus);
}

void Figure::show_figure(const FigureText& text) {
    const bool known = !text.value.isEmpty();
    caption_->setText(text.caption);
    value_->setText(known ? text.value : QStringLiteral("–"));
    unit_->setText(known ? text.unit : QString());
    plus_minus_->setText(known && !text.plus_minus.isEmpty() ? QStringLiteral("± ") + text.plus_minus
                                                             : QString());
    basis_->setText(text.basis);
    basis_->setVisible(!text.basis.isEmpty());
    QString spoken = text.caption + QStringLiteral(": ");
    spoken += known ? text.value + u' ' + text.unit : tr("not known");
    if (!plus_minus_->text().isEmpty()) spoken += tr(", plus or minus %1").arg(text.plus_minus);
    if (!text.basis.isEmpty()) spoken += QStringLiteral(", ") + text.basis;
    setAccessibleName(spoken);
}

void Figure::show_state(State state, const QString& word) {
    mark_->show_state(state, word);
    mark_->show();
}

void Figure::hide_state() {
    mark_->hide();
}

}  // namespace spoilbook::form
