// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/solids_rows.h"

class QLabel;

namespace spoilbook::form {

class BookSession;
class ChartFrame;
class ChoiceField;
class TableView;
class UnitField;

inline constexpr int solids_width = 900;

/// Suspended solids from a site's turbidity, by its samples: the line and how sure it is, what it says at a
/// turbidity, and every sample, also those that are left out.
class SolidsSheet : public QWidget {
    Q_OBJECT

 public:
    SolidsSheet(BookSession& session, const QString& site, QWidget* parent = nullptr);

 signals:
    /// A sample of this site is to be written.
    void sample_wanted(const QString& site);
    void exported(const QString& path);
    void failed(const QString& why);

 private:
    void show_site();
    void show_at();

    BookSession& session_;
    ChoiceField* site_;
    QLabel *sentence_, *said_;
    UnitField* at_ = nullptr;
    ChartFrame* chart_;
    TableView* table_;
    RowTable<SolidsPoint>* rows_ = nullptr;
    SiteSolids solids_;
};

}  // namespace spoilbook::form
