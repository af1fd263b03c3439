// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/works/figures_page.h"

class QLabel;

namespace spoilbook::form {

class LimitsTable;
class Sheet;

/// The officer's first page: every limit with its headroom, and what the chosen condition says.
class LimitsLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit LimitsLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;

 private:
    QWidget* build_condition();
    void show_condition();
    void show_evidence(int row);

    QLabel* sentence_;
    LimitsTable* limits_;
    QLabel* name_;
    QLabel* text_;
    QLabel* numbers_;
    QLabel* question_;
    Sheet* sheet_;
    Sheet* load_sheet_;  ///< over the evidence
};

/// How many limits stand how, in one sentence; the worst first.
QString limits_sentence(const std::vector<LimitState>& states);

}  // namespace spoilbook::form
