// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/return/return_facts.h"

namespace spoilbook::form {

/// One site's turbidity in the month, as the return prints it.
struct WaterRow {
    QString site, role, unit, overruled;
    double readings = 0, counted = 0, expired = 0;
    std::optional<double> complete_percent, median, p95, greatest;
};

/// A trigger passed in the month, and how its answer stands.
struct AnsweredRow {
    QString condition, site, passed, clear, due, answer, cause, done;
    State answer_state = State::unknown;
    std::optional<double> peak;
};

std::vector<WaterRow> water_rows(const ReturnFacts& facts, const QLocale& locale);
std::vector<AnsweredRow> answered_rows(const ReturnFacts& facts, const QLocale& locale);

std::vector<Column<WaterRow>> water_columns(const QLocale& locale);
std::vector<Column<AnsweredRow>> answered_columns(const QLocale& locale);

}  // namespace spoilbook::form
