// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/day_typed.h"

#include <QRegularExpression>

#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

constexpr int years_ahead = 8;  // to the next 29 February, whichever century turns

int month_named(const QString& word, const QLocale& locale) {
    bool is_number = false;
    const int number = word.toInt(&is_number);
    if (is_number) return number >= 1 && number <= 12 ? number : 0;
    QString bare = word;
    bare.remove(u'.');
    for (const QLocale& language : {locale, QLocale(QLocale::English)}) {
        for (int month = 1; month <= 12; ++month) {
            const QString whole = language.monthName(month);
            // "Jun", "June" and "Sept": the beginning of a name, three letters at least.
            if (bare.size() >= 3 && whole.startsWith(bare, Qt::CaseInsensitive)) return month;
        }
    }
    return 0;
}

}  // namespace

std::optional<Day> day_typed(const QString& text, Day after, const QLocale& locale) {
    const QString bare = text.simplified();
    if (const auto iso = parse_day(bare.toStdString())) return *iso;
    static const QRegularExpression form(
        QStringLiteral(R"(^(\d{1,2})[ ./]+(\d{1,2}|\p{L}+\.?)[./]?(?:[ ./]*(\d{4}))?$)"));
    const auto match = form.match(bare);
    if (!match.hasMatch()) return std::nullopt;
    const int month = month_named(match.captured(2), locale);
    const int day = match.captured(1).toInt();
    if (month == 0) return std::nullopt;
    if (!match.captured(3).isEmpty()) {
        const Day given{match.captured(3).toInt(), month, day};
        return exists(given) ? std::optional(given) : std::nullopt;
    }
    for (int year = after.year; year <= after.year + years_ahead; ++year) {
        const Day next{year, month, day};
        if (exists(next) && next > after) return next;
    }
    return std::nullopt;
}

}  // namespace spoilbook::form
