// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>

#include "forms/shared/state_mark.h"
#include "forms/works/table_paste.h"
#include "model/record/table_check.h"

namespace spoilbook::form {

/// A plant table while it is being typed: its columns with units, one blank row at the end to go on in, and
/// beside each row what is wrong with it. Cells keep what was typed, whether it reads or not.
class TypedTable : public QAbstractTableModel {
    Q_OBJECT

 public:
    explicit TypedTable(QObject* parent = nullptr);

    /// Another table; `field` is ullage_table, hydrostatic_table or reach_table. `capacity_m3` and `lbp_m`
    /// say what is odd for this barge.
    void show(const std::string& field, const Table& table, std::optional<double> capacity_m3,
              std::optional<double> lbp_m);
    void set_cells(const Cells& cells);
    /// Puts cells in from this place on, over what is there.
    void paste(const Cells& cells, int row, int column);
    void remove_row(int row);
    [[nodiscard]] Cells cells() const;

    /// The rows that read as numbers; those that do not are left out of it.
    [[nodiscard]] const Table& table() const { return table_; }
    /// Nothing keeps it from being written: every cell reads, and no finding is worse than odd.
    [[nodiscard]] bool sound() const { return sound_; }
    /// What is wrong with the table as a whole.
    [[nodiscard]] QString of_the_whole() const { return whole_; }
    [[nodiscard]] QString message(int row) const;
    [[nodiscard]] int message_column() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
    /// A cell was typed, pasted or taken away.
    void edited();

 private:
    struct Said {
        QString words;
        State state = State::hold;
    };
    [[nodiscard]] const std::vector<TableColumn>& shape() const { return table_columns(field_); }
    void replace(Cells cells);
    void check();
    void read_cells(std::vector<int>& rows_of_table);

    std::string field_ = "ullage_table";
    std::optional<double> capacity_m3_, lbp_m_;
    Cells cells_;  ///< all but the blank one at the end
    std::vector<Said> said_;
    Table table_;
    QString whole_;
    bool sound_ = false;
};

}  // namespace spoilbook::form
