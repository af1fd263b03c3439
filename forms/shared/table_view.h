// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSortFilterProxyModel>
#include <QTableView>
#include <QWidget>

class QLabel;
class QLineEdit;

namespace spoilbook::form {

class TableModel;

/// Sorts by the exact value, blanks last whichever way; finds the filter's words in any column, in any order.
class TableFilter : public QSortFilterProxyModel {
    Q_OBJECT

 public:
    explicit TableFilter(QObject* parent);
    void set_words(const QString& words);

 protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
    [[nodiscard]] bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

 private:
    QStringList words_;
};

/// A table with a filter box, a count, copying (Ctrl+C: the selected rows as TSV, all where none is), export
/// to a file, and a text for when it is empty.
class TableView : public QWidget {
    Q_OBJECT

 public:
    /// `title` names the table to readers and in the export's file name.
    TableView(const QString& title, QWidget* parent = nullptr);

    /// The model stays the caller's.
    void set_model(TableModel* model);
    /// What stands in the middle when there is no row: why, and what brings some.
    void set_empty_text(const QString& text);
    /// The row of the caller's model under the cursor; -1: none.
    [[nodiscard]] int current_row() const;
    [[nodiscard]] QTableView* table() { return table_; }
    [[nodiscard]] const TableFilter* shown_rows() const { return filter_; }

 public slots:
    void copy();
    /// Asks where to, and writes CSV. A file that cannot be written is told by `failed`.
    void export_rows();

 signals:
    /// Enter or a double click on a row of the caller's model.
    void opened(int row);
    void current_changed(int row);
    void copied(int rows);
    void exported(const QString& path);
    void failed(const QString& why);

 protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

 private:
    QWidget* build_bar();
    void build_table();
    void show_count();
    void place_empty();
    void come_back();

    QString title_;
    QLineEdit* words_;
    QLabel* count_;
    QTableView* table_;
    TableFilter* filter_;
    QLabel* empty_;
    QString empty_text_;
    int kept_scroll_ = 0;
    int kept_row_ = -1;
    int kept_column_ = -1;
};

}  // namespace spoilbook::form
