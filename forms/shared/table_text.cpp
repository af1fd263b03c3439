// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/table_text.h"

#include <QAbstractItemModel>
#include <QStringList>
#include <set>

#include "forms/shared/table_model.h"

namespace spoilbook::form {
namespace {

QString as_text(const QModelIndex& cell) {
    QString text = cell.data(copy_role).toString();
    const bool formula = !text.isEmpty() && QStringLiteral("=+-@").contains(text.front());
    return formula && !cell.data(number_role).toBool() ? u'\'' + text : text;
}

QString on_one_line(QString text) {
    for (QChar& c : text) {
        if (c == u'\t' || c == u'\n' || c == u'\r') c = u' ';
    }
    return text;
}

QString quoted(QString text) {
    if (!text.contains(u'"') && !text.contains(u',') && !text.contains(u'\n') && !text.contains(u'\r'))
        return text;
    return u'"' + text.replace(QStringLiteral("\""), QStringLiteral("\"\"")) + u'"';
}

QStringList heads(const QAbstractItemModel& model) {
    QStringList names;
    for (int c = 0; c < model.columnCount(); ++c)
        names << model.headerData(c, Qt::Horizontal).toString();
    return names;
}

QStringList cells(const QAbstractItemModel& model, int row) {
    QStringList texts;
    for (int c = 0; c < model.columnCount(); ++c)
        texts << as_text(model.index(row, c));
    return texts;
}

std::set<int> rows_of(const QAbstractItemModel& model, const QModelIndexList& selected) {
    std::set<int> rows;
    for (const QModelIndex& index : selected)
        rows.insert(index.row());
    for (int r = 0; selected.isEmpty() && r < model.rowCount(); ++r)
        rows.insert(r);
    return rows;
}

}  // namespace

QString tsv(const QAbstractItemModel& model, const QModelIndexList& selected) {
    QString text;
    const auto add = [&text](QStringList parts) {
        for (QString& part : parts)
            part = on_one_line(part);
        text += parts.join(u'\t') + u'\n';
    };
    add(heads(model));
    for (const int row : rows_of(model, selected))
        add(cells(model, row));
    return text;
}

QString csv(const QAbstractItemModel& model) {
    QString text;
    const auto add = [&text](QStringList parts) {
        for (QString& part : parts)
            part = quoted(part);
        text += parts.join(u',') + QStringLiteral("\r\n");
    };
    add(heads(model));
    for (int row = 0; row < model.rowCount(); ++row)
        add(cells(model, row));
    return text;
}

}  // namespace spoilbook::form
