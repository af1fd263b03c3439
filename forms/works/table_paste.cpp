// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/table_paste.h"

#include <QRegularExpression>
#include <algorithm>

#include "forms/shared/number_typed.h"

namespace spoilbook::form {
namespace {

QStringList split(const QString& line, const QString& text) {
    for (const QChar divider : {u'\t', u';', u','}) {
        if (text.contains(divider)) return line.split(divider);
    }
    static const QRegularExpression blanks(QStringLiteral("\\s+"));
    return line.simplified().split(blanks);
}

QString bare(QString cell) {
    cell = cell.trimmed();
    if (cell.size() >= 2 && cell.startsWith(u'"') && cell.endsWith(u'"')) cell = cell.mid(1, cell.size() - 2);
    return cell.trimmed();
}

}  // namespace

Cells pasted_cells(const QString& text, const QLocale& locale) {
    Cells cells;
    QString plain = text;
    plain.remove(QChar(0xfeff));
    static const QRegularExpression ends(QStringLiteral("\r\n|\r|\n"));
    for (const QString& line : plain.split(ends)) {
        if (line.trimmed().isEmpty()) continue;
        QStringList row;
        for (const QString& cell : split(line, plain))
            row << bare(cell);
        while (!row.isEmpty() && row.back().isEmpty())
            row.removeLast();
        const bool numbers = std::any_of(row.begin(), row.end(), [&](const QString& cell) {
            return number_typed(cell, locale).has_value();
        });
        const bool heading = cells.empty() && !numbers;
        if (!row.isEmpty() && !heading) cells.push_back(row);
    }
    return cells;
}

QString copied_cells(const Cells& cells) {
    QStringList lines;
    for (const QStringList& row : cells)
        lines << row.join(u'\t');
    return lines.join(u'\n');
}

}  // namespace spoilbook::form
