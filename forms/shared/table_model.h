// SPDX-License-Identifier: GPL-3.0-or-later
// An item model is a snapshot of rows and one list of columns, from which display, sorting, copying and export
// all come.
#pragma once

#include <QAbstractTableModel>
#include <functional>
#include <optional>
#include <vector>

#include "forms/shared/state_mark.h"

namespace spoilbook {

/// Roles beside Qt's own.
enum TableRole {
    sort_role = Qt::UserRole + 1,  ///< the exact value: a number, or text
    copy_role,                     ///< as it goes into a file: numbers with a point, ungrouped, exact
    mark_role,                     ///< int(State) where the column has one
    number_role                    ///< bool: right-aligned, never taken for text in a file
};

/// One column, declared once. `text` is what is read; `number` makes it right-aligned and sortable as a number.
template <class Row>
struct Column {
    QString title;
    QString unit = {};
    std::function<QString(const Row&)> text;
    std::function<std::optional<double>(const Row&)> number = {};
    std::function<std::optional<State>(const Row&)> mark = {};
    std::function<QString(const Row&)> copy = {};  ///< where a file needs another text than the screen
    QString tip = {};                              ///< what the column means
};

/// What all tables answer without knowing their rows.
class TableModel : public QAbstractTableModel {
    Q_OBJECT

 public:
    using QAbstractTableModel::QAbstractTableModel;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    /// Nothing can be written into a table: it shows what the book holds.
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

 protected:
    struct Head {
        QString title;
        QString unit;
        QString tip;
        bool is_number;
    };
    [[nodiscard]] virtual int rows() const = 0;
    [[nodiscard]] virtual int columns() const = 0;
    [[nodiscard]] virtual Head head(int column) const = 0;
    [[nodiscard]] virtual QString text(int row, int column) const = 0;
    [[nodiscard]] virtual QString copy(int row, int column) const = 0;
    [[nodiscard]] virtual std::optional<double> number(int row, int column) const = 0;
    [[nodiscard]] virtual std::optional<State> mark(int row, int column) const = 0;
};

/// A number as a file has it: shortest text that reads back the same, with a point.
QString copied_number(std::optional<double> value);

template <class Row>
class RowTable : public TableModel {
 public:
    explicit RowTable(std::vector<Column<Row>> columns, QObject* parent = nullptr)
        : TableModel(parent), columns_(std::move(columns)) {}

    void set_rows(std::vector<Row> rows) {
        beginResetModel();
        rows_ = std::move(rows);
        endResetModel();
    }
    [[nodiscard]] const Row& row(int index) const { return rows_.at(std::size_t(index)); }

 protected:
    [[nodiscard]] int rows() const override { return int(rows_.size()); }
    [[nodiscard]] int columns() const override { return int(columns_.size()); }
    [[nodiscard]] Head head(int column) const override {
        const Column<Row>& c = at(column);
        return {c.title, c.unit, c.tip, bool(c.number)};
    }
    [[nodiscard]] QString text(int r, int column) const override { return at(column).text(row(r)); }
    [[nodiscard]] QString copy(int r, int column) const override {
        const Column<Row>& c = at(column);
        if (c.copy) return c.copy(row(r));
        return c.number ? copied_number(c.number(row(r))) : c.text(row(r));
    }
    [[nodiscard]] std::optional<double> number(int r, int column) const override {
        return at(column).number ? at(column).number(row(r)) : std::nullopt;
    }
    [[nodiscard]] std::optional<State> mark(int r, int column) const override {
        return at(column).mark ? at(column).mark(row(r)) : std::nullopt;
    }

 private:
    [[nodiscard]] const Column<Row>& at(int column) const { return columns_.at(std::size_t(column)); }

    std::vector<Column<Row>> columns_;
    std::vector<Row> rows_;
};

}  // namespace spoilbook
