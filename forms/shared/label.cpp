// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/label.h"

namespace spoilbook::form {

QLabel* make_label(const QString& text, Step step, Weight weight, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(type_font(step, weight));
    label->setTextFormat(Qt::PlainText);
    return label;
}

QLabel* make_quiet(const QString& text, Step step, QWidget* parent) {
    QLabel* label = make_label(text, step, Weight::regular, parent);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace spoilbook::form
