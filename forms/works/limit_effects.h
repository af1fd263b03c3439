// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/consent/limit.h"

namespace spoilbook::form {

/// What a revised factor does to one limit: as judged now, and as restated with the factor.
struct LimitEffect {
    QString name, unit;
    int decimals = 0;
    double used = 0, used_u = 0, restated = 0, restated_u = 0;
    std::optional<double> headroom, headroom_restated, p_over, p_over_restated;
};

/// A factor that may come to be.
struct FactorToBe {
    std::string material;
    double value = 0, u = 0;
    Instant from;
};

/// Every limit at `as_at` with the book's factors, and again with this one in force as well.
std::vector<LimitEffect> limit_effects(const Season& season, const FactorToBe& factor, Instant as_at);

std::vector<Column<LimitEffect>> effect_columns(const QLocale& locale);

}  // namespace spoilbook::form
