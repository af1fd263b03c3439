// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/table_model.h"
#include "forms/shared/table_view.h"

namespace spoilbook::form {

TableFilter::TableFilter(QObject* parent) : QSortFilterProxyModel(parent) {
    setSortRole(sort_role);
    setDynamicSortFilter(true);
    setSortLocaleAware(true);
}

void TableFilter::set_words(const QString& words) {
    words_ = words.simplified().split(u' ', Qt::SkipEmptyParts);
    invalidateFilter();
}

bool TableFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
    if (words_.isEmpty()) return true;
    QString all;
    for (int c = 0; c < sourceModel()->columnCount(parent); ++c) {
        all += sourceModel()->index(row, c, parent).data(Qt::AccessibleTextRole).toString() + u'\n';
    }
    return std::all_of(words_.begin(), words_.end(),
                       [&all](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

bool TableFilter::lessThan(const QModelIndex& left, const QModelIndex& right) const {
    const QVariant a = left.data(sort_role);
    const QVariant b = right.data(sort_role);
    const bool blank_a = !a.isValid() || a.toString().isEmpty();
    const bool blank_b = !b.isValid() || b.toString().isEmpty();
    if (blank_a || blank_b) {
        // What is not recorded is neither small nor large: it stands last in both directions.
        const bool up = sortOrder() == Qt::AscendingOrder;
        return blank_a == blank_b ? false : up ? blank_b : blank_a;
    }
    return QSortFilterProxyModel::lessThan(left, right);
}

}  // namespace spoilbook::form
