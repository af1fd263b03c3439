// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/typed_table.h"

#include <QLocale>
#include <algorithm>

#include "forms/shared/number_typed.h"
#include "forms/shared/table_model.h"
#include "model/unit/number_text.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

QString words_of(const TableFinding& finding) {
    QString words = shown(finding.what);
    if (!finding.mend.empty()) words += QStringLiteral("; ") + shown(finding.mend);
    words[0] = words[0].toUpper();
    return words;
}

}  // namespace

TypedTable::TypedTable(QObject* parent) : QAbstractTableModel(parent) {}

void TypedTable::show(const std::string& field, const Table& table, std::optional<double> capacity_m3,
                      std::optional<double> lbp_m) {
    field_ = field;
    capacity_m3_ = capacity_m3;
    lbp_m_ = lbp_m;
    Cells cells;
    for (const auto& row : table) {
        QStringList texts;
        for (const double number : row)
            texts << shown(number_text(number));
        cells.push_back(texts);
    }
    replace(std::move(cells));
}

void TypedTable::set_cells(const Cells& cells) {
    replace(cells);
    emit edited();
}

void TypedTable::paste(const Cells& cells, int row, int column) {
    Cells all = cells_;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::size_t at = std::size_t(row) + i;
        if (at >= all.size()) all.resize(at + 1);
        QStringList& into = all[at];
        for (qsizetype c = 0; c < cells[i].size(); ++c) {
            while (into.size() <= column + c)
                into << QString();
            into[column + c] = cells[i][c];
        }
    }
    set_cells(all);
}

void TypedTable::remove_row(int row) {
    if (row < 0 || row >= int(cells_.size())) return;
    Cells all = cells_;
    all.erase(all.begin() + row);
    set_cells(all);
}

Cells TypedTable::cells() const {
    return cells_;
}

void TypedTable::replace(Cells cells) {
    beginResetModel();
    cells_ = std::move(cells);
    check();
    endResetModel();
}

// Blank rows are passed over; a cell that is no number keeps its row out of the table.
void TypedTable::read_cells(std::vector<int>& rows_of_table) {
    const QLocale locale;
    for (std::size_t i = 0; i < cells_.size(); ++i) {
        QStringList texts = cells_[i];
        while (!texts.isEmpty() && texts.back().isEmpty())
            texts.removeLast();
        if (texts.isEmpty()) continue;
        std::vector<double> numbers;
        for (const QString& text : texts) {
            const auto number = number_typed(text, locale);
            if (number) {
                numbers.push_back(*number);
                continue;
            }
            said_[i] = {text.isEmpty() ? tr("A number is missing.")
                                       : tr("“%1” is not a number. Write it like 1.85.").arg(text),
                        State::hold};
            sound_ = false;
            break;
        }
        if (!said_[i].words.isEmpty()) continue;
        table_.push_back(std::move(numbers));
        rows_of_table.push_back(int(i));
    }
}

void TypedTable::check() {
    table_.clear();
    said_.assign(cells_.size() + 1, {});
    whole_.clear();
    sound_ = true;
    std::vector<int> rows_of_table;
    read_cells(rows_of_table);
    const TableFindings found = field_ == "ullage_table"        ? check_ullage_table(table_, capacity_m3_)
                                : field_ == "hydrostatic_table" ? check_hydrostatic_table(table_, lbp_m_)
                                                                : check_reach_table(table_);
    for (const TableFinding& finding : found) {
        const State state = finding.grade == TableGrade::odd ? State::attention : State::hold;
        sound_ = sound_ && state != State::hold;
        if (!finding.row) {
            whole_ = words_of(finding);
            continue;
        }
        Said& said = said_[std::size_t(rows_of_table[*finding.row])];
        if (said.words.isEmpty()) said = {words_of(finding), state};
    }
}

QString TypedTable::message(int row) const {
    return said_.at(std::size_t(row)).words;
}

int TypedTable::message_column() const {
    return int(shape().size());
}

int TypedTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int(cells_.size()) + 1;
}

int TypedTable::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : message_column() + 1;
}

QVariant TypedTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    if (index.column() == message_column()) {
        const Said& said = said_.at(std::size_t(index.row()));
        if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return said.words;
        if (role == mark_role && !said.words.isEmpty()) return int(said.state);
        return {};
    }
    if (role == Qt::TextAlignmentRole) return int(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::AccessibleTextRole) {
        const TableColumn& column = shape()[std::size_t(index.column())];
        return tr("%1, row %2, %3")
            .arg(shown(column.name))
            .arg(index.row() + 1)
            .arg(data(index, Qt::DisplayRole).toString());
    }
    if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
    if (index.row() >= int(cells_.size())) return QString();
    return cells_[std::size_t(index.row())].value(index.column());
}

bool TypedTable::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (!index.isValid() || role != Qt::EditRole || index.column() >= message_column()) return false;
    const QString text = value.toString().trimmed();
    if (text == data(index, Qt::EditRole).toString()) return true;
    const bool grows = index.row() == int(cells_.size());
    if (grows) {
        beginInsertRows({}, index.row() + 1, index.row() + 1);
        cells_.emplace_back();
        said_.emplace_back();
        endInsertRows();
    }
    QStringList& row = cells_[std::size_t(index.row())];
    while (row.size() <= index.column())
        row << QString();
    row[index.column()] = text;
    check();
    emit dataChanged(this->index(0, 0), this->index(rowCount() - 1, columnCount() - 1));
    emit edited();
    return true;
}

QVariant TypedTable::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole) return {};
    if (orientation == Qt::Vertical) return section + 1;
    if (section == message_column()) return tr("What is wrong");
    const TableColumn& column = shape()[std::size_t(section)];
    QString name = shown(column.name);
    name[0] = name[0].toUpper();
    return tr("%1, %2").arg(name, shown(column.unit));
}

Qt::ItemFlags TypedTable::flags(const QModelIndex& index) const {
    const Qt::ItemFlags seen = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
    return index.column() < message_column() ? seen | Qt::ItemIsEditable : seen;
}

}  // namespace spoilbook::form
