// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>

#include "forms/works/figures_page.h"
#include "forms/works/reconcile_rows.h"

class QBoxLayout;
class QLabel;
class QPushButton;

namespace spoilbook::form {

class AcceptSheet;
class Sheet;
class TableView;

/// Barges against the bed: every claim between two of its surveys, whether the two agree, and the bulking
/// factors that would make all of them agree at once.
class ReconcileLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit ReconcileLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_top();
    void open_accept();
    void ask_effects();

    QLabel* sentence_;
    QBoxLayout* top_;
    BedPlot* plot_;
    TableView* proposals_;
    QPushButton* accept_;
    TableView* periods_;
    RowTable<PeriodRow>* period_rows_;
    RowTable<ProposalRow>* proposal_rows_;
    Sheet* sheet_;
    QPointer<AcceptSheet> accepting_;
};

}  // namespace spoilbook::form
