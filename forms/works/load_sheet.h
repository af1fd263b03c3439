// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/book_session.h"
#include "forms/works/load_tables.h"

class QLabel;
class QTabWidget;

namespace spoilbook::form {

class StateMark;
class TableView;

inline constexpr int load_sheet_width = 1040;

/// Everything that is known of how much is in one load: all methods side by side, the one that counts and
/// why, how they agree, the split, the factors with their versions, the readings, and who entered what.
class LoadSheet : public QWidget {
    Q_OBJECT

 public:
    LoadSheet(BookSession& session, std::string load, QWidget* parent = nullptr);

 private:
    template <class Row>
    RowTable<Row>* add_table(const QString& title, std::vector<Column<Row>> columns, const QString& empty);
    void build_head();
    void refresh();
    void show_view(const LoadView& view);
    [[nodiscard]] std::vector<NamedRow> readings(const Load& load) const;
    [[nodiscard]] std::vector<StepRow> steps(const Load& load) const;

    BookSession& session_;
    std::string label_;
    QLabel* counts_;
    StateMark* mark_;
    QLabel* why_;
    QLabel* of_;
    TableView* methods_view_;
    QTabWidget* tabs_;
    RowTable<MethodRow>* methods_;
    RowTable<PairRow>* pairs_;
    RowTable<PartRow>* parts_;
    RowTable<FactorRow>* factors_;
    RowTable<NamedRow>* readings_;
    RowTable<SaidRow>* said_;
    RowTable<StepRow>* steps_;
};

}  // namespace spoilbook::form
