// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/what_if_words.h"

#include <QCoreApplication>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/works/forecast_words.h"
#include "forms/works/pace_words.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("WhatIf", text);
}

// What the model says where the log does not tell, for the translator.
[[maybe_unused]] constexpr const char* reasons[] = {
    QT_TRANSLATE_NOOP("WhatIf", "no filling is logged within a shift"),
    QT_TRANSLATE_NOOP("WhatIf", "no change of barge is logged within a shift"),
    QT_TRANSLATE_NOOP("WhatIf", "no round trip is logged"),
    QT_TRANSLATE_NOOP("WhatIf", "no load names its barge"),
    QT_TRANSLATE_NOOP("WhatIf", "no trip names its tug"),
};

QString plant_shown(std::size_t number, const QString& one, const QString& more) {
    return number == 1 ? one : more.arg(number);
}

QString barges_shown(std::size_t number) {
    return plant_shown(number, tr("1 barge"), tr("%1 barges"));
}

QString tugs_shown(std::size_t number) {
    return plant_shown(number, tr("1 tug"), tr("%1 tugs"));
}

QString more_or_less(double value, const QString& more, const QString& less, const QLocale& locale) {
    return (value > 0 ? more : less).arg(number_shown(std::abs(value), 0, locale));
}

QStringList plant_parts(const WorksSupposed& supposed, const QLocale& locale) {
    QStringList parts;
    if (supposed.barges) parts << barges_shown(std::size_t(*supposed.barges));
    if (supposed.tugs) parts << tugs_shown(std::size_t(*supposed.tugs));
    if (supposed.haul_more_km)
        parts << more_or_less(*supposed.haul_more_km, tr("haul %1 km longer"), tr("haul %1 km shorter"),
                              locale);
    if (supposed.round_trip_more_min)
        parts << more_or_less(*supposed.round_trip_more_min, tr("round trip %1 min longer"),
                              tr("round trip %1 min shorter"), locale);
    if (supposed.hours_a_day)
        parts << tr("%1 shift hours a day").arg(number_shown(*supposed.hours_a_day, 1, locale));
    if (supposed.days_a_week)
        parts << tr("%1 days a week").arg(number_shown(*supposed.days_a_week, 1, locale));
    return parts;
}

QString allowed_shown(const Pace& pace, const QLocale& locale) {
    const auto number = [&](double value) { return number_shown(value, 2, locale); };
    return tr("Loads an hour at most: dredger %1, %2 %3, %4 %5")
        .arg(number(*pace.by_dredger), tugs_shown(pace.tugs), number(*pace.by_tugs),
             barges_shown(pace.barges), number(*pace.by_barges));
}

}  // namespace

QString supposed_shown(const WorksSupposed& supposed, Day as_at, const QLocale& locale) {
    if (supposed == WorksSupposed{}) return {};
    QStringList parts = plant_parts(supposed, locale);
    const Supposed& others = supposed.others;
    if (others.hours_factor != 1)
        parts << tr("filling hours × %1").arg(number_shown(others.hours_factor, 2, locale));
    if (others.rate_factor != 1)
        parts << tr("in-situ m³ an hour × %1").arg(number_shown(others.rate_factor, 2, locale));
    if (others.over_dredge_share != 0)
        parts << tr("over-dredge %1 %").arg(number_shown(others.over_dredge_share * 100, 0, locale));
    if (others.season_opens)
        parts << tr("season opens %1").arg(near_day(*others.season_opens, as_at, locale));
    if (others.season_closes)
        parts << tr("season closes %1").arg(near_day(*others.season_closes, as_at, locale));
    return tr("What if: %1.").arg(parts.join(QStringLiteral(", ")));
}

QString held_up_shown(const WorksLogged& logged, int weeks, const QLocale& locale) {
    const QString as = weeks > 0 ? tr("Forecast as the last %1 weeks.").arg(weeks) + u' ' : QString();
    const auto governs = logged.pace.governs();
    if (!governs)
        return as +
               tr("What holds the loads up is not in the log: %1.").arg(tr(logged.why_no_pace().c_str()));
    return as + tr("%1; held up by %2.").arg(allowed_shown(logged.pace, locale), governs_shown(*governs));
}

QString held_up_shown(const WorksLogged& logged, const WorksToBe& to_be, const QLocale& locale) {
    const double factor = to_be.supposed.rate_factor * to_be.supposed.hours_factor;
    const QString brings = tr("A week brings × %1.").arg(number_shown(factor, 2, locale));
    const auto governs = to_be.pace.governs();
    if (!governs) return brings;
    const QString held =
        tr("%1; held up by %2 (as logged %3, %4).")
            .arg(allowed_shown(to_be.pace, locale), governs_shown(*governs),
                 number_shown(*logged.pace.least(), 2, locale), governs_shown(*logged.pace.governs()));
    return held + u' ' + brings;
}

}  // namespace spoilbook::form
