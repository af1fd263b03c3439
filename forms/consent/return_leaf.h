// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/return_rows.h"
#include "forms/works/figures_page.h"

class QLabel;
class QPushButton;
class QTabWidget;

namespace spoilbook::form {

class ChoiceField;
class Figure;
class Sheet;
class TableView;

/// A month's return: what is missing, what it will say, and the press that makes it.
class ReturnLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit ReturnLeaf(FiguresSource& source, QWidget* parent = nullptr);

    /// Writes the return of the month that is shown into a new or empty folder, and tells that it did or why
    /// not, above the sheet.
    void write_to(const QString& folder);

 protected:
    void show_figures(const FiguresMade& figures) override;

 private:
    void build_head();
    void build_answer();
    void build_tables();
    void gather();
    void show_gathering();
    void show_return(ReturnShown shown);
    void show_failed(int row);
    void make_return();

    std::string shown_month_;
    bool whole_ = false;   ///< nothing is missing from the month that is shown
    bool making_ = false;  ///< a return is being written
    ChoiceField* month_;
    QPushButton* make_;
    StateMark* mark_;
    QLabel* answer_;
    QLabel* reasons_;
    Figure* in_situ_;
    Figure* hopper_;
    Figure* releases_;
    Figure* late_;
    QTabWidget* tabs_;
    TableView *missing_, *totals_, *schedule_, *judged_, *triggers_, *water_;
    Sheet *sheet_, *load_sheet_;
    RowTable<MissingRow>* missing_rows_;
    RowTable<TotalRow>* total_rows_;
    RowTable<ScheduleRow>* schedule_rows_;
    RowTable<JudgedRow>* judged_rows_;
    RowTable<AnsweredRow>* trigger_rows_;
    RowTable<WaterRow>* water_rows_;
};

}  // namespace spoilbook::form
