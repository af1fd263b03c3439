// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/shared/table_model.h"
#include "forms/works/figures_page.h"
#include "model/answer/volumes.h"

class QLabel;

namespace spoilbook::form {

class Bars;
class ChoiceField;
class Sheet;
class TableView;

/// What was released, by month, claim, ground, cell, material or barge.
class VolumesLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit VolumesLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;

 private:
    void build_head();
    void open_loads(int row);
    void show_rows(std::vector<VolumeRow> rows, GroupBy by, std::optional<double> monthly_limit);

    ChoiceField* by_;
    QLabel* total_;
    Bars* bars_;
    TableView* table_;
    RowTable<VolumeRow>* rows_ = nullptr;
    Sheet* sheet_;
    Sheet* load_sheet_;  ///< over the loads behind a volume
};

}  // namespace spoilbook::form
