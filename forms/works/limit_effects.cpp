// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/limit_effects.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Reconcile", text);
}

Season with_factor(Season season, const FactorToBe& factor) {
    Factor row;
    // An id of its own, after all others: it is in no book yet.
    row.id.bytes.fill(0xff);
    row.from = factor.from;
    row.factor = "bulking";
    row.value = factor.value;
    row.u = factor.u;
    for (const Material& material : season.materials.rows()) {
        if (material.material == factor.material) row.material = material.id;
    }
    season.factors.add(row);
    return season;
}

}  // namespace

std::vector<LimitEffect> limit_effects(const Season& season, const FactorToBe& factor, Instant as_at) {
    const Season to_be = with_factor(season, factor);
    const Ledger now(season);
    const Ledger then(to_be);
    const auto judged = limits_at(now, as_at);
    const auto restated = limits_as_restated(then, as_at);
    std::vector<LimitEffect> effects;
    for (std::size_t i = 0; i < std::min(judged.size(), restated.size()); ++i) {
        const LimitState& before = judged[i];
        const LimitState& after = restated[i];
        const double scale = limit_scale(before.quantity);
        LimitEffect effect;
        effect.name = limit_name(before);
        effect.unit = limit_unit(before.quantity);
        effect.decimals = limit_decimals(before.quantity);
        effect.used = before.used * scale;
        effect.used_u = before.used_u * scale;
        effect.restated = after.used * scale;
        effect.restated_u = after.used_u * scale;
        if (before.headroom()) effect.headroom = *before.headroom() * scale;
        if (after.headroom()) effect.headroom_restated = *after.headroom() * scale;
        effect.p_over = before.p_over;
        effect.p_over_restated = after.p_over;
        effects.push_back(std::move(effect));
    }
    return effects;
}

std::vector<Column<LimitEffect>> effect_columns(const QLocale& locale) {
    using Row = LimitEffect;
    const auto up = [locale](const QString& title, double Row::*member) {
        return Column<Row>(title, {},
                           [=](const Row& row) { return rounded_up(row.*member, row.decimals, locale); })
            .number([=](const Row& row) { return std::optional(row.*member); });
    };
    const auto down = [locale](const QString& title, std::optional<double> Row::*member) {
        return Column<Row>(title, {},
                           [=](const Row& row) {
                               return row.*member ? rounded_down(*(row.*member), row.decimals, locale)
                                                  : QString();
                           })
            .number([=](const Row& row) { return row.*member; });
    };
    const auto chance = [locale](const QString& title, std::optional<double> Row::*member) {
        return Column<Row>(title, {},
                           [=](const Row& row) {
                               return row.*member ? probability_shown(*(row.*member), locale) : QString();
                           })
            .number([=](const Row& row) { return row.*member; });
    };
    return {
        Column<Row>(tr("Limit"), {}, [](const Row& row) { return row.name; }),
        Column<Row>(tr("Counts"), {}, [](const Row& row) { return row.unit; }),
        up(tr("Used now"), &Row::used),
        up(tr("± u"), &Row::used_u),
        up(tr("Restated"), &Row::restated),
        up(tr("± u"), &Row::restated_u),
        down(tr("Headroom now"), &Row::headroom),
        down(tr("Restated"), &Row::headroom_restated),
        chance(tr("P(over) now"), &Row::p_over),
        chance(tr("Restated"), &Row::p_over_restated),
    };
}

}  // namespace spoilbook::form
