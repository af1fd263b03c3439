// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/condition_rows.h"
#include "forms/works/figures_page.h"
#include "forms/works/forecast_source.h"

class QLabel;
class QPushButton;

namespace spoilbook::form {

class ConditionEditor;
class Sheet;
class TableView;

/// The officer's first page: every condition in force with how it stands, and what the chosen one says. What
/// a number is made of is one press away, and so is the next version of a condition.
class ConditionsLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit ConditionsLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;

 private:
    QWidget* build_condition();
    void show_rows();
    void judge_all();
    void show_condition();
    void show_evidence(int row);
    void open_editor(const Condition* before);
    void try_condition_of(ConditionEditor* editor);
    [[nodiscard]] const ConditionRow* current() const;

    QLabel* sentence_;
    TableView* table_;
    RowTable<ConditionRow>* rows_;
    std::vector<ConditionRow> made_;
    QLabel* name_;
    QLabel* text_;
    QLabel* numbers_;
    QLabel* notes_;
    QPushButton* behind_;
    QPushButton* change_;
    Sheet* sheet_;
    Sheet* load_sheet_;  ///< over the evidence and the editor
    ForecastSource forecasts_;
};

}  // namespace spoilbook::form
