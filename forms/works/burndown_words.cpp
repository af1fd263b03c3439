// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/burndown_words.h"

#include <QCoreApplication>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Burndown", text);
}

QString plan_words(const PlanStanding& standing, const QLocale& locale) {
    const double ahead = *standing.ahead_m3;
    if (std::abs(ahead) < 0.5) return tr("on the plan");
    return ahead > 0 ? tr("%1 m³ ahead of the plan").arg(rounded_down(ahead, 0, locale))
                     : tr("%1 m³ behind the plan").arg(rounded_up(-ahead, 0, locale));
}

QString done_words(const BurnDown& burn, const QLocale& locale) {
    const QString done =
        tr("%1 ± %2 m³ in situ")
            .arg(rounded_down(burn.dredged_m3, 0, locale), rounded_up(burn.dredged_u_m3, 0, locale));
    if (burn.planned_m3 <= 0) return tr("%1 dredged; no claim has a planned volume.").arg(done);
    const auto standing = plan_standing(burn);
    const double left = standing ? standing->left_m3 : burn.planned_m3;
    QString words =
        left > 0 ? tr("%1 of %2 m³ dredged, %3 m³ left")
                       .arg(done, number_shown(burn.planned_m3, 0, locale), rounded_up(left, 0, locale))
                 : tr("%1 dredged, more than the %2 m³ planned")
                       .arg(done, number_shown(burn.planned_m3, 0, locale));
    if (standing && standing->ahead_m3) words += QStringLiteral(", ") + plan_words(*standing, locale);
    return words + u'.';
}

}  // namespace

QString unknown_words(const BurnDown& burn) {
    if (burn.unknown == 0) return {};
    return tr("Loads that no method can value: %1.").arg(burn.unknown) + u' ';
}

QString burndown_sentence(const BurnDown& burn, const std::vector<LimitState>& limits,
                          const QLocale& locale) {
    QString words = done_words(burn, locale);
    if (burn.unknown > 0) words += u' ' + tr("Loads that no method can value: %1.").arg(burn.unknown);
    const LimitState* least = least_headroom(limits);
    if (!least) return words;
    const QString headroom = rounded_down(*least->headroom() * limit_scale(least->quantity),
                                          limit_decimals(least->quantity), locale);
    return words + u' ' +
           tr("Least headroom: condition %1 (%2), %3 used, %4 %5 left.")
               .arg(limit_name(*least), book_text(least->condition->text),
                    share_used(*least->used_share(), locale), headroom, limit_unit(least->quantity));
}

FigureText dredged_figure(const BurnDown& burn, const QLocale& locale) {
    return {tr("Dredged"), rounded_down(burn.dredged_m3, 0, locale), QStringLiteral("m³"),
            rounded_up(burn.dredged_u_m3, 0, locale), tr("in situ, loads closed by the as-at")};
}

FigureText left_figure(const BurnDown& burn, const QLocale& locale) {
    const auto standing = plan_standing(burn);
    FigureText text{tr("Left to dredge"), {}, QStringLiteral("m³"), {}, tr("in situ")};
    if (burn.planned_m3 <= 0) return text;
    text.value = rounded_up(standing ? standing->left_m3 : burn.planned_m3, 0, locale);
    text.plus_minus = rounded_up(burn.dredged_u_m3, 0, locale);
    text.basis = tr("in situ, of %1 m³ planned").arg(number_shown(burn.planned_m3, 0, locale));
    return text;
}

FigureText plan_figure(const BurnDown& burn, const QLocale& locale) {
    const auto standing = plan_standing(burn);
    FigureText text{tr("Against the plan"), {}, QStringLiteral("m³"), {}, tr("no claim is planned by days")};
    if (!standing || !standing->ahead_m3) return text;
    const double ahead = *standing->ahead_m3;
    text.caption = ahead < 0 ? tr("Behind the plan") : tr("Ahead of the plan");
    text.value = ahead < 0 ? rounded_up(-ahead, 0, locale) : rounded_down(ahead, 0, locale);
    text.plus_minus = rounded_up(burn.dredged_u_m3, 0, locale);
    text.basis = tr("in situ, planned to be left: %1 m³").arg(number_shown(*standing->plan_m3, 0, locale));
    return text;
}

FigureText headroom_figure(const LimitState* least, const QLocale& locale) {
    if (!least) return {tr("Least headroom"), {}, {}, {}, tr("no limit on a quantity")};
    const int decimals = limit_decimals(least->quantity);
    const double scale = limit_scale(least->quantity);
    const QString unit = limit_unit(least->quantity);
    return {tr("Least headroom, condition %1").arg(limit_name(*least)),
            rounded_down(*least->headroom() * scale, decimals, locale), unit.section(u' ', 0, 0),
            rounded_up(least->used_u * scale, decimals, locale),
            tr("%1 of the limit used").arg(share_used(*least->used_share(), locale))};
}

}  // namespace spoilbook::form
