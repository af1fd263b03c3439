// SPDX-License-Identifier: GPL-3.0-or-later
// An item model is a snapshot of rows and one list of columns, from which display, sorting, copying and
// export all come.
#pragma once

#include <QAbstractTableModel>
#include <functional>
#include <optional>
#include <vector>

#include "forms/shared/state_mark.h"

namespace spoilbook::form {

/// Roles beside Qt's own.
enum TableRole {
    sort_role = Qt::UserRole + 1,  ///< the exact value: a number, or text
    copy_role,                     ///< as it goes into a file: numbers with a point, ungrouped, exact
    mark_role,                     ///< int(State) where the column has one
    number_role                    ///< bool: right-aligned, never taken for text in a file
};

/// One column, declared once: `text` is what is read. The rest is added by name:
///     Column<Trip>(tr("Carried"), tr("m³"), carried_text).number(carried).tip(tr("in-situ, by ullage"))
template <class Row>
class Column {
 public:
    using Text = std::function<QString(const Row&)>;
    using Number = std::function<std::optional<double>(const Row&)>;
    using Mark = std::function<std::optional<State>(const Row&)>;

    Column(QString title, QString unit, Text text)
        : title_(std::move(title)), unit_(std::move(unit)), text_(std::move(text)) {}

    /// Right-aligned, sorted by the exact value, and copied as it.
    Column& number(Number number) { return number_ = std::move(number), *this; }
    /// A state's shape before the text.
    Column& mark(Mark mark) { return mark_ = std::move(mark), *this; }
    /// What a file gets where it is not what the screen shows (a time with its offset).
    Column& copied_as(Text copy) { return copy_ = std::move(copy), *this; }
    /// What the column means.
    Column& tip(QString tip) { return tip_ = std::move(tip), *this; }

 private:
    template <class>
    friend class RowTable;
    QString title_;
    QString unit_;
    QString tip_;
    Text text_;
    Text copy_;
    Number number_;
    Mark mark_;
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
        return {c.title_, c.unit_, c.tip_, bool(c.number_)};
    }
    [[nodiscard]] QString text(int r, int column) const override { return at(column).text_(row(r)); }
    [[nodiscard]] QString copy(int r, int column) const override {
        const Column<Row>& c = at(column);
        if (c.copy_) return c.copy_(row(r));
        return c.number_ ? copied_number(c.number_(row(r))) : c.text_(row(r));
    }
    [[nodiscard]] std::optional<double> number(int r, int column) const override {
        return at(column).number_ ? at(column).number_(row(r)) : std::nullopt;
    }
    [[nodiscard]] std::optional<State> mark(int r, int column) const override {
        return at(column).mark_ ? at(column).mark_(row(r)) : std::nullopt;
    }

 private:
    [[nodiscard]] const Column<Row>& at(int column) const { return columns_.at(std::size_t(column)); }

    std::vector<Column<Row>> columns_;
    std::vector<Row> rows_;
};

}  // namespace spoilbook::form
