// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/consent/return_judged_rows.h"
#include "forms/consent/return_water_rows.h"
#include "forms/shared/figure.h"

namespace spoilbook::form {

/// One line of the schedule, as the return prints it.
struct ScheduleRow {
    QString trip, at_text, at_copy, claims, material, barge, ground, cell, method, place, late;
    State place_state = State::unknown;
    std::optional<double> hopper_m3, in_situ_m3;
};

/// A total, as the return prints it. `by`: what it is of.
struct TotalRow {
    QString by, key;
    double releases = 0, unknown = 0;
    std::optional<double> in_situ_m3, hopper_m3;
};

struct MissingRow {
    QString what, where;
};

/// A return gathered for the screen: no pointers into the ledger.
struct ReturnShown {
    QString period;
    std::vector<MissingRow> missing;
    std::vector<ScheduleRow> schedule;
    std::vector<TotalRow> totals;
    std::vector<WaterRow> water;
    std::vector<AnsweredRow> triggers;
    std::vector<JudgedRow> judged;
    QStringList reasons;
    QStringList not_judged;  ///< conditions that a return does not judge, and why
    FigureText in_situ, hopper, releases, late;
    QString problem;  ///< why nothing could be gathered; empty: it was
};

ReturnShown return_shown(const ReturnFacts& facts, const QLocale& locale);

std::vector<Column<ScheduleRow>> schedule_columns(const QLocale& locale);
std::vector<Column<TotalRow>> total_columns(const QLocale& locale);
std::vector<Column<MissingRow>> missing_columns();

}  // namespace spoilbook::form
