// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/answer/proposal_effect.h"

namespace spoilbook::form {

/// What a revised factor does to one limit, ready to be read; numbers in the unit that is shown.
struct EffectRow {
    QString name, unit;
    int decimals = 0;
    double used = 0, used_u = 0;        ///< as judged now
    double revised = 0, revised_u = 0;  ///< with the revision in force
    double judged = 0;                  ///< until the authority has accepted it
    std::optional<double> headroom, headroom_revised, p_over, p_over_revised;
};

/// A factor that may come to be.
struct FactorToBe {
    std::string material;
    double value = 0, u = 0;
    Instant from;
};

/// Every limit at `as_at` with the book's factors, and with this one in force as well.
std::vector<EffectRow> effect_rows(const Ledger& ledger, const FactorToBe& factor, Instant as_at);

std::vector<Column<EffectRow>> effect_columns(const QLocale& locale);

}  // namespace spoilbook::form
