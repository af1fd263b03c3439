// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/time_typed.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <QRegularExpression>

#include "model/unit/calendar.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TimeField", text);
}

struct Parts {
    std::optional<Day> day = {};
    std::optional<int> month_day = {};  ///< a day of the month alone
    int hour = 0;
    int minute = 0;
    std::optional<int> offset_s = {};
};

WallTime wall_of(Day day, const Parts& parts) {
    WallTime wall;
    wall.day = day;
    wall.hour = parts.hour;
    wall.minute = parts.minute;
    return wall;
}

TimeReading refused(const QString& problem) {
    return {std::nullopt, problem};
}

QString clock_text(const Parts& parts) {
    return QStringLiteral("%1:%2")
        .arg(parts.hour, 2, 10, QLatin1Char('0'))
        .arg(parts.minute, 2, 10, QLatin1Char('0'));
}

// The instant of a wall time on one day, or why there is none.
TimeReading on_day(Day day, const Parts& parts, const TimeContext& context) {
    const WallTime wall = wall_of(day, parts);
    const Instant first = context.zone.instant(wall);
    if (parts.offset_s) {
        const Instant given = Zone::utc().instant(wall) - std::int64_t(*parts.offset_s) * ms_per_second;
        return {given, {}};
    }
    switch (context.zone.occurs(wall)) {
        case Occurs::never:
            return refused(tr("The clocks went forward over %1 that day. Write the time that they showed.")
                               .arg(clock_text(parts)));
        case Occurs::twice: {
            const int early = context.zone.wall(first).offset_s;
            const int late = context.zone.wall(first + 3 * ms_per_hour).offset_s;
            const auto suffix = [](int s) { return offset_shown(s).mid(3); };
            return refused(tr("%1 came twice that day. Write %1%2 for the first or %1%3 for the second.")
                               .arg(clock_text(parts), suffix(early), suffix(late)));
        }
        case Occurs::once:
            break;
    }
    return {first, {}};
}

// The day that a bare time means; see TimeContext.
TimeReading nearest(const Parts& parts, const TimeContext& context) {
    const Instant anchor = context.after.value_or(context.now);
    const Day today = context.zone.day_of(anchor);
    for (int step = 0; step <= 1; ++step) {
        const TimeReading reading = on_day(plus_days(today, context.after ? step : -step), parts, context);
        if (!reading.at || (context.after ? *reading.at >= anchor : *reading.at <= anchor)) return reading;
    }
    return on_day(today, parts, context);
}

std::optional<Parts> parts_of(const QRegularExpressionMatch& match, const TimeContext& context) {
    Parts parts;
    parts.hour = match.captured(QStringLiteral("h")).toInt();
    parts.minute = match.captured(QStringLiteral("m")).toInt();
    const QString year = match.captured(QStringLiteral("y"));
    const QString day = match.captured(QStringLiteral("d"));
    const QString month = match.captured(QStringLiteral("mon"));
    const Day near = context.zone.day_of(context.after.value_or(context.now));
    if (!year.isEmpty()) {
        parts.day = Day{year.toInt(), match.captured(QStringLiteral("ym")).toInt(),
                        match.captured(QStringLiteral("yd")).toInt()};
    } else if (!day.isEmpty()) {
        parts.day = Day{near.year, month.isEmpty() ? near.month : month.toInt(), day.toInt()};
    }
    const QString sign = match.captured(QStringLiteral("s"));
    if (!sign.isEmpty()) {
        const int hours = match.captured(QStringLiteral("oh")).toInt();
        const int minutes = match.captured(QStringLiteral("om")).toInt();
        parts.offset_s = (sign == QStringLiteral("-") ? -1 : 1) * (hours * 3600 + minutes * 60);
    } else if (!match.captured(QStringLiteral("z")).isEmpty()) {
        parts.offset_s = 0;
    }
    if (parts.hour > 23 || parts.minute > 59 || (parts.day && !exists(*parts.day))) return std::nullopt;
    return parts;
}

}  // namespace

TimeReading time_typed(const QString& text, const TimeContext& context) {
    static const QRegularExpression ago(QStringLiteral("^\\+\\s*(\\d{1,3})$"));
    static const QRegularExpression wall(QStringLiteral(
        "^(?:(?<y>\\d{4})-(?<ym>\\d{2})-(?<yd>\\d{2})[T ]|(?<d>\\d{1,2})(?:[/.](?<mon>\\d{1,2}))? )?"
        "(?<h>\\d{1,2})[:.hH]?(?<m>\\d{2})"
        "(?:(?<s>[+-])(?<oh>\\d{1,2})(?::?(?<om>\\d{2}))?|(?<z>[Zz]))?$"));
    const QString bare = text.simplified();
    if (bare.isEmpty()) return {};
    if (bare.compare(tr("now"), Qt::CaseInsensitive) == 0) return {context.now, {}};
    if (const auto match = ago.match(bare); match.hasMatch()) {
        return {context.now - match.captured(1).toLongLong() * ms_per_minute, {}};
    }
    const auto match = wall.match(bare);
    const std::optional<Parts> parts = match.hasMatch() ? parts_of(match, context) : std::nullopt;
    if (!parts) {
        return refused(tr("“%1” is not a time. Write 0540 or 05:40; +5 for five minutes ago.").arg(bare));
    }
    return parts->day ? on_day(*parts->day, *parts, context) : nearest(*parts, context);
}

QString time_shown(Instant at, const Zone& zone) {
    const WallTime wall = zone.wall(at);
    return QStringLiteral("%1:%2")
        .arg(wall.hour, 2, 10, QLatin1Char('0'))
        .arg(wall.minute, 2, 10, QLatin1Char('0'));
}

QString day_and_time_shown(Instant at, const Zone& zone) {
    const WallTime wall = zone.wall(at);
    const QDate date(wall.day.year, wall.day.month, wall.day.day);
    return QStringLiteral("%1, %2 %3")
        .arg(QLocale().toString(date, QStringLiteral("ddd d MMM yyyy")), time_shown(at, zone),
             offset_shown(wall.offset_s));
}

QString offset_shown(int offset_s) {
    const int minutes = std::abs(offset_s) / 60;
    QString text = QStringLiteral("UTC%1%2").arg(QLatin1Char(offset_s < 0 ? '-' : '+')).arg(minutes / 60);
    if (minutes % 60 != 0) text += QStringLiteral(":%1").arg(minutes % 60, 2, 10, QLatin1Char('0'));
    return text;
}

}  // namespace spoilbook::form
