// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/time_field.h"

#include <QLineEdit>

#include "forms/shared/type_scale.h"

namespace spoilbook::form {

TimeField::TimeField(const QString& label, std::function<TimeContext()> context, QWidget* parent)
    : FieldBox(label, parent), context_(std::move(context)), edit_(new QLineEdit(this)) {
    edit_->setTextMargins(grid, 0, grid, 0);
    set_editor(edit_);
    connect(edit_, &QLineEdit::editingFinished, this, &TimeField::leave);
    show_reading();
}

QString TimeField::text() const {
    return edit_->text();
}

void TimeField::set_value(std::optional<Instant> value) {
    value_ = value;
    settled_ = value ? time_shown(*value, context_().zone) : QString();
    edit_->setText(settled_);
    show_problem({});
    end_question();
    show_reading();
}

void TimeField::offer(Instant at, const QString& why) {
    set_offer(tr("%1 · %2").arg(time_shown(at, context_().zone), why), [this, at] {
        edit_->setText(time_shown(at, context_().zone));
        settled_ = edit_->text();
        value_ = at;
        show_problem({});
        show_reading();
        emit committed(value_);
        edit_->setFocus();
    });
}

void TimeField::leave() {
    if (edit_->text() == settled_) return;
    const TimeContext context = context_();
    const TimeReading reading = time_typed(edit_->text(), context);
    settled_ = edit_->text();
    if (!reading.problem.isEmpty()) return show_problem(reading.problem);
    show_problem({});
    end_question();
    value_ = reading.at;
    if (value_) {
        settled_ = time_shown(*value_, context.zone);
        edit_->setText(settled_);
    }
    show_reading();
    emit committed(value_);
    const QString question = value_ && odd_ ? odd_(*value_) : QString();
    if (!question.isEmpty()) {
        ask(question, [this, at = *value_] { emit odd_kept(at); });
    }
}

void TimeField::show_reading() {
    const TimeContext context = context_();
    if (value_) return set_hint(day_and_time_shown(*value_, context.zone));
    set_hint(tr("Local time, %1").arg(offset_shown(context.zone.wall(context.now).offset_s)));
}

}  // namespace spoilbook::form
