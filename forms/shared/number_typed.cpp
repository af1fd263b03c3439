// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/number_typed.h"

#include <cmath>

namespace spoilbook::form {

std::optional<double> number_typed(const QString& text, const QLocale& locale) {
    QString bare;
    for (const QChar c : text) {
        if (!c.isSpace()) bare += c == QChar(0x2212) ? u'-' : c;
    }
    bool ok = false;
    double value = QLocale::c().toDouble(bare, &ok);
    // A lone comma is a decimal comma for whoever's language says so; "1,234" in English stays refused
    // grouping.
    if (!ok && locale.decimalPoint() != QLocale::c().decimalPoint()) value = locale.toDouble(bare, &ok);
    if (!ok || !std::isfinite(value)) return std::nullopt;
    return value;
}

Checked<double> degrees_typed(const QString& text, Axis axis, const QLocale& locale) {
    QString bare = text.trimmed();
    if (locale.decimalPoint() != QStringLiteral("."))
        bare.replace(locale.decimalPoint(), QStringLiteral("."));
    return parse_degrees(bare.toStdString(), axis);
}

QString number_shown(double value, int decimals, const QLocale& locale) {
    return locale.toString(value, 'f', decimals);
}

}  // namespace spoilbook::form
