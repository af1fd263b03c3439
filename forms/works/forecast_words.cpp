// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/forecast_words.h"

#include <QCoreApplication>
#include <QDate>
#include <cmath>

#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Forecast", text);
}

// What the model says where there is none, for the translator.
[[maybe_unused]] constexpr const char* reasons[] = {
    QT_TRANSLATE_NOOP("Forecast", "no claim has a planned volume"),
    QT_TRANSLATE_NOOP("Forecast", "fewer than four weeks of dredging are logged"),
};

QString sentence_case(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

QString between(Day from, Day to, Day as_at, const QLocale& locale) {
    const bool one_month = from.year == to.year && from.month == to.month;
    return tr("between %1 and %2")
        .arg(one_month ? locale.toString(from.day) : near_day(from, as_at, locale),
             near_day(to, as_at, locale));
}

QString limit_first(const LimitForecast& limit, double p, Day as_at, const QLocale& locale) {
    const QString phrase = sentence_case(limit_phrase(limit.state));
    const auto headroom = limit.state.headroom();
    if (headroom && *headroom < 0) return tr("%1 is over already.").arg(phrase);
    const QString words = tr("%1 comes first, %2").arg(phrase, chance_shown(p, locale));
    if (!limit.dates.p50) return words + u'.';
    return tr("%1: about %2.").arg(words, near_day(*limit.dates.p50, as_at, locale));
}

QString each_limit(const WindowRule& rule) {
    switch (rule.kind) {
        case WindowKind::rolling:
        case WindowKind::calendar:
            break;
        case WindowKind::consent_year:
            return tr("the consent year's limit");
        case WindowKind::mean:
            return tr("the limit on the mean of %1 years").arg(rule.n);
        default:
            return tr("the limit");
    }
    const bool rolling = rule.kind == WindowKind::rolling;
    switch (rule.unit) {
        case WindowUnit::days:
            return rolling ? tr("the %1-day limit").arg(rule.n) : tr("the daily limit");
        case WindowUnit::weeks:
            return rolling ? tr("the %1-week limit").arg(rule.n) : tr("the weekly limit");
        case WindowUnit::months:
            return rolling ? tr("the %1-month limit").arg(rule.n) : tr("the monthly limit");
        case WindowUnit::years:
            break;
    }
    return rolling ? tr("the %1-year limit").arg(rule.n) : tr("the yearly limit");
}

}  // namespace

QString near_day(Day day, Day as_at, const QLocale& locale) {
    const QString form = day.year == as_at.year ? QStringLiteral("d MMMM") : QStringLiteral("d MMMM yyyy");
    return locale.toString(QDate(day.year, day.month, day.day), form);
}

QString dates_shown(const Dates& dates, Day as_at, const QLocale& locale) {
    if (!dates.p50) {
        return dates.p10 ? tr("not before %1 and hardly in sight").arg(near_day(*dates.p10, as_at, locale))
                         : tr("not in sight");
    }
    const QString about = tr("about %1").arg(near_day(*dates.p50, as_at, locale));
    if (!dates.p10) return about;
    if (!dates.p90) {
        return about + QStringLiteral(", ") +
               tr("from %1 on, the latest not in sight").arg(near_day(*dates.p10, as_at, locale));
    }
    if (*dates.p10 == *dates.p90) return about;
    return about + QStringLiteral(", ") + between(*dates.p10, *dates.p90, as_at, locale);
}

QString limit_phrase(const LimitState& state) {
    const QString limit = each_limit(state.quantity.window);
    const QString condition = QString::fromStdString(state.condition->condition);
    if (!state.member || state.member->name.empty()) return tr("%1 (condition %2)").arg(limit, condition);
    return tr("%1 for %2 (condition %3)").arg(limit, QString::fromStdString(state.member->name), condition);
}

QString chance_shown(double p, const QLocale& locale) {
    const long hundreds = std::lround(p * 100);
    if (hundreds == 0) return tr("fewer than %1 in 100").arg(locale.toString(1));
    if (hundreds == 100) return tr("more than %1 in 100").arg(locale.toString(99));
    return tr("%1 in 100").arg(locale.toString(int(hundreds)));
}

QString forecast_sentence(const Forecast& forecast, Day as_at, const QLocale& locale) {
    if (!forecast.why_none.empty())
        return tr("No forecast of what comes first: %1.").arg(tr(forecast.why_none.c_str()));
    if (forecast.left_m3 <= 0) return tr("What was planned is dredged.");
    if (forecast.first.empty()) return tr("Nothing is forecast to come.");
    const ComesFirst& first = forecast.first.front();
    const QString target = dates_shown(forecast.target, as_at, locale);
    const QString then = tr("The target %1.").arg(target);
    switch (first.what) {
        case ComesFirst::What::target:
            return tr("The target comes first, %1: %2.").arg(chance_shown(first.p, locale), target);
        case ComesFirst::What::limit:
            return limit_first(forecast.limits.at(first.limit), first.p, as_at, locale) + u' ' + then;
        case ComesFirst::What::season:
            return tr("The season's end comes first, %1: all work stops from %2.")
                       .arg(chance_shown(first.p, locale), near_day(*forecast.season_closes, as_at, locale)) +
                   u' ' + then;
        case ComesFirst::What::nothing:
            break;
    }
    return tr("Going on like this, neither the target nor a limit is in sight.");
}

}  // namespace spoilbook::form
