// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/unit_field.h"

#include <QHBoxLayout>
#include <QLineEdit>

#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"

namespace spoilbook::form {

UnitField::UnitField(const QString& label, UnitRule rule, QWidget* parent)
    : FieldBox(label, parent), rule_(std::move(rule)), edit_(new QLineEdit(this)) {
    edit_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    auto* inside = new QHBoxLayout(edit_);
    inside->setContentsMargins(0, 0, grid + 4, 0);
    inside->setSizeConstraint(QLayout::SetNoConstraint);
    inside->addStretch();
    QLabel* unit = make_quiet(rule_.unit, Step::body, edit_);
    unit->setAttribute(Qt::WA_TransparentForMouseEvents);
    inside->addWidget(unit);
    edit_->setTextMargins(grid, 0, unit->sizeHint().width() + 2 * grid, 0);
    set_editor(edit_);
    edit_->setAccessibleName(rule_.unit.isEmpty() ? label : tr("%1 in %2").arg(label, rule_.unit));
    connect(edit_, &QLineEdit::editingFinished, this, &UnitField::leave);
    connect(edit_, &QLineEdit::textEdited, this, &FieldBox::edited);
}

QString UnitField::shown(double value) const {
    return number_shown(value, rule_.decimals, locale());
}

QString UnitField::text() const {
    return edit_->text();
}

void UnitField::set_value(std::optional<double> value) {
    value_ = value;
    settled_ = value ? shown(*value) : QString();
    edit_->setText(settled_);
    show_problem({});
    end_question();
}

void UnitField::offer(double value, const QString& why) {
    const QString text = tr("%1 %2 · %3").arg(shown(value), rule_.unit, why);
    set_offer(text, [this, value] {
        edit_->setText(shown(value));
        leave();
        edit_->setFocus();
    });
}

Checked<double> UnitField::typed() const {
    if (rule_.axis) return degrees_typed(edit_->text(), *rule_.axis, locale());
    if (const auto number = number_typed(edit_->text(), locale())) return *number;
    const QString what = tr("“%1” is not a number").arg(edit_->text().trimmed());
    const QString mend = tr("write it like %1").arg(shown((rule_.least + rule_.most) / 2));
    return Refusal{"not-a-number", {}, what.toStdString(), mend.toStdString()};
}

// Leaving a box and pressing Enter both end up here, sometimes one after the other: the same text counts
// once.
void UnitField::leave() {
    const QString typed = edit_->text();
    if (typed == settled_) return;
    settled_ = typed;
    if (typed.trimmed().isEmpty()) {
        if (!rule_.may_be_blank)
            return refuse(tr("Nothing is written. A number in %1 is needed.").arg(rule_.unit));
        return commit(std::nullopt);
    }
    const Checked<double> number = this->typed();
    if (!number) {
        const Refusal why = number.refusals().front();
        return refuse(tr("%1; %2.").arg(QString::fromStdString(why.what), QString::fromStdString(why.mend)));
    }
    if (*number < rule_.least || *number > rule_.most) {
        return refuse(tr("%1 %2 is not possible here: it lies between %3 and %4 %2.")
                          .arg(typed.trimmed(), rule_.unit, shown(rule_.least), shown(rule_.most)));
    }
    commit(*number);
    const QString question = rule_.odd ? rule_.odd(*number) : QString();
    if (!question.isEmpty()) {
        ask(question, [this, value = *number] { emit odd_kept(value); });
    }
}

void UnitField::refuse(const QString& why) {
    show_problem(why);
}

void UnitField::commit(std::optional<double> value) {
    show_problem({});
    end_question();
    value_ = value;
    emit committed(value);
}

}  // namespace spoilbook::form
