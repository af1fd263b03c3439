// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/shared/field.h"

class QLineEdit;

namespace spoilbook::form {

/// A line of text. Emits when the box is left with another text than before; whoever listens answers with
/// show_problem. What was typed stays in any case.
class TextField : public FieldBox {
    Q_OBJECT

 public:
    TextField(const QString& label, const QString& unit, QWidget* parent = nullptr);

    [[nodiscard]] QString text() const;
    /// Shows what the book holds. Emits nothing.
    void set_text(const QString& text);
    void set_read_only(bool read_only);
    void offer(const QString& text, const QString& why);

 signals:
    void committed(const QString& text);

 private:
    void leave();

    QLineEdit* edit_;
    QString settled_;
};

}  // namespace spoilbook::form
