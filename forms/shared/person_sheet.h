// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/session.h"

class QLineEdit;

namespace spoilbook::form {

class ChoiceField;

/// Whose hand writes: a name of the book, or a relief's typed name. Logging is never locked out.
class PersonSheet : public QWidget {
    Q_OBJECT

 public:
    explicit PersonSheet(Session& session, QWidget* parent = nullptr);

 signals:
    void done();

 private:
    void take();

    Session& session_;
    ChoiceField* name_;
    QLineEdit* relief_;
};

}  // namespace spoilbook::form
