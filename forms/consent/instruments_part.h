// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/instrument_rows.h"

namespace spoilbook::form {

class BookSession;
class Sheet;
struct LogColumn;
class TableView;

/// The loggers: which stands where, since when, and until when its calibration holds. What is new is written
/// on a sheet; Enter on a row opens it.
class InstrumentsPart : public QWidget {
    Q_OBJECT

 public:
    InstrumentsPart(BookSession& session, Sheet* sheet, QWidget* parent = nullptr);

    /// By the session's as-at.
    void show_stands();
    /// How many that stand at a site now have an expired calibration, or none recorded.
    [[nodiscard]] int in_doubt() const { return in_doubt_; }
    [[nodiscard]] TableView* table() const { return table_; }

 private:
    void deploy();
    void calibrate();
    void serve();
    void open(int row);
    void write(const Kind& kind, const char* prefix, const QString& title, const QString& words,
               std::vector<LogColumn> columns);
    /// The site and serial number of the row under the cursor, to be offered.
    [[nodiscard]] const InstrumentStand* current() const;

    BookSession& session_;
    Sheet* sheet_;
    TableView* table_;
    RowTable<InstrumentStand>* rows_;
    int in_doubt_ = 0;
};

}  // namespace spoilbook::form
