// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "model/unit/instant.h"

class QLabel;

namespace spoilbook::form {

class BookSession;
class ChoiceField;
class TextField;
class TimeField;

/// A person's flag on a site's readings, with the reason. The raw values and what the checks said stay.
class FlagSheet : public QWidget {
    Q_OBJECT

 public:
    /// Readings from `first` to `last`, both included, `count` of them chosen.
    FlagSheet(BookSession& session, const QString& site, Instant first, Instant last, int count,
              QWidget* parent = nullptr);

 signals:
    void written();

 private:
    void write();

    BookSession& session_;
    QString site_;
    TimeField *from_, *to_;
    ChoiceField* flag_;
    TextField* why_;
    QLabel* problem_;
};

}  // namespace spoilbook::form
