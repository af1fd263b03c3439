// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>
#include <QString>

#include "forms/shared/table_model.h"
#include "model/answer/try_condition.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// How it did, in one sentence: "It would have been passed 3 times, first on …; held against 600 releases."
QString trial_sentence(const Trial& trial, const Zone& zone, const QLocale& locale);
std::vector<Column<TrialPass>> trial_columns(const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
