// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/shared/table_model.h"
#include "forms/works/figures_page.h"
#include "forms/works/forecast_rows.h"
#include "forms/works/forecast_source.h"

class QBoxLayout;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace spoilbook::form {

class ChartFrame;
class Figure;
class LimitsTable;
class Sheet;
class TableView;
class WhatIfPanel;

/// The manager's first page: what comes first, what is done and left against plan and limits, and what if.
class BurndownLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit BurndownLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_figures();
    QWidget* build_tables();
    void show_numbers(const Figures& figures);
    void ask_forecast();
    void show_forecast();
    void draw_chart();
    /// Says that a forecast is on its way, unless it comes at once.
    void tell_busy();

    QLabel* first_;  ///< what comes first
    QPushButton* season_;
    ForecastSource forecasts_;
    WhatIfPanel* what_if_;
    Figure* dredged_;
    Figure* left_;
    Figure* plan_;
    Figure* headroom_;
    ChartFrame* chart_;
    LimitsTable* limits_;
    RowTable<ForecastRow>* date_rows_;
    TableView* dates_;
    QStackedWidget* tables_;
    QBoxLayout* controls_;  ///< what the forecast goes by, and the buttons beside or below it
    Sheet* sheet_;
    Sheet* load_sheet_;  ///< over the evidence
};

}  // namespace spoilbook::form
