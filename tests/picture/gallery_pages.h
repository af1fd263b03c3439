// SPDX-License-Identifier: GPL-3.0-or-later
// Pages of the gallery: each shows one family of widgets in all its states, with invented data.
#pragma once

#include <QWidget>

namespace spoilbook::gallery {

QWidget* marks_page();
QWidget* icons_page();
QWidget* fields_page();
QWidget* table_page(bool empty);
QWidget* chart_page(bool empty);
QWidget* chart_table_page();
QWidget* busy_page();
QWidget* sheet_page();
QWidget* window_page(const QString& desk, bool reading_only);
QWidget* start_page(bool empty);
QWidget* person_page();

}  // namespace spoilbook::gallery
