// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/release_rows.h"
#include "forms/works/figures_page.h"

class QLabel;
class QSplitter;

namespace spoilbook::form {

class ChoiceField;
class ReleaseMap;
class TableView;

/// Where every release was, held against its ground: table and map side by side.
class ReleasesLeaf : public FiguresPage {
    Q_OBJECT

 public:
    explicit ReleasesLeaf(FiguresSource& source, QWidget* parent = nullptr);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    QWidget* build_map();
    void show_chosen();
    void show_picked(int row);

    QLabel* sentence_;
    ChoiceField* which_;
    QSplitter* split_;
    TableView* table_;
    RowTable<ReleaseRow>* rows_;
    ReleaseMap* map_;
    std::vector<ReleaseRow> all_;
};

}  // namespace spoilbook::form
