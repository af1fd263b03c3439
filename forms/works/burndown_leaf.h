// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/works/figures_page.h"

class QLabel;

namespace spoilbook::form {

class ChartFrame;
class Figure;
class LimitsTable;
class Sheet;

/// The manager's first page: what is done and left, against plan and limits.
class BurndownLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit BurndownLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;

 private:
    QWidget* build_figures();
    void show_numbers(const Figures& figures);

    QLabel* sentence_;
    Figure* dredged_;
    Figure* left_;
    Figure* plan_;
    Figure* headroom_;
    ChartFrame* chart_;
    LimitsTable* limits_;
    Sheet* sheet_;
    Sheet* load_sheet_;  ///< over the evidence
};

}  // namespace spoilbook::form
