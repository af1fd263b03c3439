// SPDX-License-Identifier: GPL-3.0-or-later
// Measures and breaks text in the program's own typefaces. Needs a QGuiApplication (PrintSession).
#pragma once

#include <QFont>
#include <QString>
#include <string>
#include <vector>

#include "forms/print/type.h"

namespace spoilbook::print {

/// Device units a point: a page is drawn at 1440 units an inch, so that font sizes are whole numbers of them.
inline constexpr int units_per_point = 20;

/// The font of a type, in device units. Throws std::runtime_error if a typeface cannot be loaded.
QFont font_of(const Type& type);

/// Text as it can be printed: composed (NFC), without control characters but '\n'; a character that the
/// typeface lacks, and one that would change the order of others, shows as its code: [U+4E2D]. Bytes that are
/// not UTF-8 show as U+FFFD.
QString printable(const std::string& utf8);

/// Width in points of one line.
double width_of(const QString& text, const Type& type);

/// Width in points of the widest piece between places where a line may break.
double widest_word(const QString& text, const Type& type);

/// Lines no wider than `width` points, broken between words, inside a word only where it is wider than a
/// line. At least one line, which may be empty.
std::vector<QString> break_lines(const QString& text, const Type& type, double width);

}  // namespace spoilbook::print
