// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/choice_field.h"

#include <QComboBox>
#include <QSignalBlocker>
#include <QWheelEvent>

namespace spoilbook::form {
namespace {

/// Turning the wheel over a page scrolls the page: it never chooses another bucket or claim on the way.
class Box : public QComboBox {
 public:
    using QComboBox::QComboBox;

 protected:
    void wheelEvent(QWheelEvent* event) override { event->ignore(); }
};

}  // namespace

ChoiceField::ChoiceField(const QString& label, QWidget* parent)
    : FieldBox(label, parent), box_(new Box(this)) {
    box_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box_->setMinimumContentsLength(10);
    box_->setFocusPolicy(Qt::StrongFocus);
    box_->setPlaceholderText(tr("not chosen"));
    box_->setCurrentIndex(-1);
    set_editor(box_);
    connect(box_, &QComboBox::activated, this, [this](int index) {
        if (index < 0) return;
        show_problem({});
        emit committed(box_->itemData(index).toString());
    });
}

void ChoiceField::set_choices(const std::vector<Choice>& choices) {
    const QSignalBlocker quiet(box_);
    const std::optional<QString> before = chosen();
    box_->clear();
    for (const Choice& choice : choices)
        box_->addItem(choice.text, choice.key);
    box_->setCurrentIndex(before ? box_->findData(*before) : -1);
}

std::optional<QString> ChoiceField::chosen() const {
    if (box_->currentIndex() < 0) return std::nullopt;
    return box_->currentData().toString();
}

void ChoiceField::set_chosen(const std::optional<QString>& key) {
    const QSignalBlocker quiet(box_);
    show_problem({});
    int index = key ? box_->findData(*key) : -1;
    if (key && index < 0) {
        box_->addItem(*key, *key);
        index = box_->count() - 1;
        show_problem(tr("%1 is not in the list any more. Choose another.").arg(*key));
    }
    box_->setCurrentIndex(index);
}

void ChoiceField::offer(const QString& key, const QString& why) {
    const int index = box_->findData(key);
    if (index < 0) return;
    set_offer(tr("%1 · %2").arg(box_->itemText(index), why), [this, key] {
        set_chosen(key);
        emit committed(key);
    });
}

}  // namespace spoilbook::form
