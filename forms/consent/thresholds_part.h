// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/instrument_rows.h"

namespace spoilbook::form {

class BookSession;
class Sheet;
class TableView;

/// The thresholds of each site's checks, version by version. Setting them writes a new version from a time
/// on: the ones before stay, and hold for the readings before.
class ThresholdsPart : public QWidget {
    Q_OBJECT

 public:
    ThresholdsPart(BookSession& session, Sheet* sheet, QWidget* parent = nullptr);

    void show_versions();
    [[nodiscard]] TableView* table() const { return table_; }

 private:
    void set_new();
    void open(int row);

    BookSession& session_;
    Sheet* sheet_;
    TableView* table_;
    RowTable<ThresholdVersion>* rows_;
};

}  // namespace spoilbook::form
