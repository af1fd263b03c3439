// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QStringList>
#include <vector>

namespace spoilbook::form {

/// Rows of cells as text, each trimmed.
using Cells = std::vector<QStringList>;

/// A table as it is pasted or read from a file: a tab, else a semicolon, else a comma divides the cells, else
/// blanks do. Blank lines and a first line without any number (a heading) are left out; quotation marks
/// around a cell are taken off. The cells are not checked here.
Cells pasted_cells(const QString& text, const QLocale& locale);

/// The same cells as a spreadsheet takes them: tabs between, a line each.
QString copied_cells(const Cells& cells);

}  // namespace spoilbook::form
