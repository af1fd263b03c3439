// SPDX-License-Identifier: GPL-3.0-or-later
// Tables as text, for the clipboard and for files. The C locale: what is read on screen is not what a file
// has.
#pragma once

#include <QItemSelectionModel>
#include <QString>

class QAbstractItemModel;

namespace spoilbook::form {

/// The rows that hold a selected cell, all their columns, under the heads; all rows where nothing is
/// selected. Tabs and line ends inside a cell become blanks.
QString tsv(const QAbstractItemModel& model, const QModelIndexList& selected);

/// All rows as RFC 4180 with a head. A text cell that begins with = + - @ gets an apostrophe before it, so
/// that a spreadsheet takes it for text.
QString csv(const QAbstractItemModel& model);

}  // namespace spoilbook::form
