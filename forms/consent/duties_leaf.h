// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/duty_rows.h"
#include "forms/works/figures_page.h"

class QBoxLayout;
class QLabel;

namespace spoilbook::form {

class DutyMonth;
class Sheet;
class TableView;

/// Everything that the consents ask for by a day: what is open, what comes, what was done and what shows it.
class DutiesLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit DutiesLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    void build_head();
    QWidget* build_side();
    void show_duty();
    void open_duty(int row);
    void open_trigger(const DutyRow& row);
    void export_calendar();

    QLabel* sentence_;
    QBoxLayout* halves_;
    TableView* table_;
    RowTable<DutyRow>* rows_;
    DutyMonth* month_;
    QLabel* name_;
    QLabel* how_;
    Sheet* sheet_;
};

}  // namespace spoilbook::form
