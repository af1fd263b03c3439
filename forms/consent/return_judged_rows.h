// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/standing_rows.h"
#include "model/return/return_facts.h"

namespace spoilbook::form {

/// How the month stands under one condition that is judged by release, trip or load.
struct JudgedRow {
    QString condition, text;
    double complied = 0, cannot_tell = 0, breached = 0;
    ConditionStanding failed;  ///< with what failed alone
};

std::vector<JudgedRow> judged_rows(const ReturnFacts& facts, const QLocale& locale);
std::vector<Column<JudgedRow>> judged_columns(const QLocale& locale);

}  // namespace spoilbook::form
