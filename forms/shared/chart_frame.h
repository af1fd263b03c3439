// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/chart_data.h"
#include "forms/shared/table_model.h"

class QChart;
class QChartView;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace spoilbook::form {

class TableView;

/// One point of a chart as a row of numbers.
struct ChartRow {
    QString series;
    QString x_text;
    double x = 0;
    double y = 0;
    std::optional<double> upper = {};
};

/// A chart with its title and sentence, the same numbers as a table, and export as PNG, SVG, PDF or CSV.
class ChartFrame : public QWidget {
    Q_OBJECT

 public:
    explicit ChartFrame(QWidget* parent = nullptr);

    void set_data(const ChartData& data);
    [[nodiscard]] const ChartData& data() const { return data_; }
    void show_table(bool table);
    [[nodiscard]] bool shows_table() const;
    /// The picture or the numbers, by the ending of `path`: .png .svg .pdf .csv. Empty: written; otherwise
    /// why not.
    QString write(const QString& path);

 signals:
    void exported(const QString& path);
    void failed(const QString& why);

 private:
    void build_head();
    void draw();
    void fill_table();
    void ask_export();

    ChartData data_;
    QLabel* title_;
    QLabel* sentence_;
    QPushButton* toggle_;
    QStackedWidget* pages_;
    QChartView* view_;
    RowTable<ChartRow>* rows_ = nullptr;
    TableView* table_ = nullptr;
    QLabel* empty_;
};

}  // namespace spoilbook::form
