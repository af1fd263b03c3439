// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/table_model.h"

#include "model/unit/number_text.h"

namespace spoilbook::form {

int TableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rows();
}

int TableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns();
}

QVariant TableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const int r = index.row();
    const int c = index.column();
    const bool is_number = head(c).is_number;
    switch (role) {
        case Qt::DisplayRole:
        case Qt::AccessibleTextRole: {
            const auto state = mark(r, c);
            const QString shown = text(r, c);
            return role == Qt::AccessibleTextRole && shown.isEmpty() && state ? word_of(*state) : shown;
        }
        case Qt::TextAlignmentRole:
            return int(Qt::AlignVCenter | (is_number ? Qt::AlignRight : Qt::AlignLeft));
        case sort_role:
            if (is_number) {
                const auto value = number(r, c);
                return value ? QVariant(*value) : QVariant();
            }
            return copy(r, c);
        case copy_role:
            return copy(r, c);
        case mark_role: {
            const auto state = mark(r, c);
            return state ? QVariant(int(*state)) : QVariant();
        }
        case number_role:
            return is_number;
        default:
            return {};
    }
}

QVariant TableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical || section < 0 || section >= columns()) return {};
    const Head h = head(section);
    switch (role) {
        case Qt::DisplayRole:
            return h.unit.isEmpty() ? h.title : h.title + QStringLiteral(", ") + h.unit;
        case Qt::ToolTipRole:
            return h.tip.isEmpty() ? QVariant() : h.tip;
        case Qt::TextAlignmentRole:
            return int(Qt::AlignVCenter | (h.is_number ? Qt::AlignRight : Qt::AlignLeft));
        default:
            return {};
    }
}

Qt::ItemFlags TableModel::flags(const QModelIndex& index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

QString copied_number(std::optional<double> value) {
    return value ? QString::fromStdString(number_text(*value)) : QString();
}

}  // namespace spoilbook::form
