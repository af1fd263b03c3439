// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of the load sheet's tables.
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "forms/works/load_view.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// A reading, or what an entry changed: a name and what stands there.
struct NamedRow {
    QString name, value;
};

/// One entry of the journal that touched the load.
struct StepRow {
    Instant at;
    QString who, what, why;
};

std::vector<Column<MethodRow>> method_columns(const QLocale& locale);
std::vector<Column<PairRow>> pair_columns(const QLocale& locale);
std::vector<Column<PartRow>> part_columns(const QLocale& locale);
std::vector<Column<FactorRow>> factor_columns(const Zone& zone, const QLocale& locale);
std::vector<Column<SaidRow>> said_columns();
std::vector<Column<NamedRow>> named_columns();
std::vector<Column<StepRow>> step_columns(const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
