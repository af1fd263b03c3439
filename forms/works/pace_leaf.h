// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/works/figures_page.h"
#include "forms/works/pace_words.h"

class QBoxLayout;
class QLabel;
class QTabWidget;

namespace spoilbook::form {

class ChartFrame;
class FigureRow;
class OverDredgePart;
class Sheet;
class TableView;

/// Where the hours went, what an hour of digging brings, who holds up the loads, and what was dug too deep.
class PaceLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit PaceLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    struct Shown;

    QWidget* build_pictures();
    QWidget* build_tables();
    template <class Row>
    TableView* add_table(RowTable<Row>*& rows, const QString& title, std::vector<Column<Row>> columns);
    void show_pace(Shown shown);
    void ask_over_dredge();
    void open_delays(const QString& title, std::vector<DelayLine> lines);
    void open_shifts(const QString& title, const std::vector<QString>& names);

    QLabel* sentence_;
    Figure *rate_, *shift_, *step_, *least_;
    QBoxLayout* halves_;
    LyingBars* bars_;
    ChartFrame* chart_;
    QTabWidget* tabs_;
    RowTable<CauseRow>* causes_ = nullptr;
    RowTable<PaceRow>* weeks_ = nullptr;
    RowTable<PaceRow>* shifts_ = nullptr;
    RowTable<StepLine>* steps_ = nullptr;
    OverDredgePart* over_dredge_ = nullptr;
    std::vector<PaceRow> shift_rows_;
    Sheet* sheet_;
    Sheet* delays_sheet_;  ///< over the shifts of a week
};

}  // namespace spoilbook::form
