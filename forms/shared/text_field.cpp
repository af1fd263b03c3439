// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/text_field.h"

#include <QHBoxLayout>
#include <QLineEdit>

#include "forms/shared/label.h"

namespace spoilbook::form {

TextField::TextField(const QString& label, const QString& unit, QWidget* parent)
    : FieldBox(label, parent), edit_(new QLineEdit(this)) {
    int right = grid;
    if (!unit.isEmpty()) {
        auto* inside = new QHBoxLayout(edit_);
        inside->setContentsMargins(0, 0, grid + 4, 0);
        inside->setSizeConstraint(QLayout::SetNoConstraint);
        QLabel* words = make_quiet(unit, Step::body, edit_);
        words->setAttribute(Qt::WA_TransparentForMouseEvents);
        inside->addStretch();
        inside->addWidget(words);
        right = words->sizeHint().width() + 2 * grid;
    }
    edit_->setTextMargins(grid, 0, right, 0);
    set_editor(edit_);
    if (!unit.isEmpty()) edit_->setAccessibleName(tr("%1 in %2").arg(label, unit));
    connect(edit_, &QLineEdit::editingFinished, this, &TextField::leave);
    connect(edit_, &QLineEdit::textEdited, this, &FieldBox::edited);
}

QString TextField::text() const {
    return edit_->text();
}

void TextField::set_text(const QString& text) {
    settled_ = text;
    edit_->setText(text);
    edit_->setCursorPosition(0);
    show_problem({});
}

void TextField::set_read_only(bool read_only) {
    edit_->setReadOnly(read_only);
}

void TextField::offer(const QString& text, const QString& why) {
    set_offer(tr("%1 · %2").arg(text, why), [this, text] {
        edit_->setText(text);
        leave();
        edit_->setFocus();
    });
}

void TextField::leave() {
    if (edit_->text() == settled_) return;
    settled_ = edit_->text();
    emit committed(settled_);
}

}  // namespace spoilbook::form
