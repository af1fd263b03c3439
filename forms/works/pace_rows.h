// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/progress/positioning.h"
#include "model/progress/productivity.h"

namespace spoilbook::form {

/// One delay as it is read; copied out of the season, as all rows here.
struct DelayLine {
    QString shift, cause, from_text, from_copy, remarks;
    double minutes = 0;
};

/// The hours of one cause, with the delays that they are made of. Digging and what is not accounted for are
/// rows of their own without any.
struct CauseRow {
    QString cause;
    double hours = 0, share = 0;
    std::vector<DelayLine> delays;
    bool is_delay = true;
};

/// Shifts together or one shift.
struct PaceRow {
    QString key;  ///< a shift's number, or the Monday of a week
    double shifts = 0, shift_h = 0, operating_h = 0, delay_h = 0, not_accounted_h = 0, loads = 0, unknown = 0;
    std::optional<double> in_situ_m3, in_situ_u_m3, rate, rate_u, efficiency;
    std::vector<QString> shift_names;
    std::vector<DelayLine> delays;  ///< of one shift
    Instant from;
};

/// One step of the pontoon.
struct StepLine {
    QString shift, from, to, at_text, at_copy;
    double minutes = 0, delayed = 0;
};

std::vector<CauseRow> cause_rows(const HoursRow& all, const Zone& zone, const QLocale& locale);
std::vector<PaceRow> pace_rows(const Productivity& made, const Zone& zone, HoursOver over,
                               const QLocale& locale);
std::vector<StepLine> step_lines(const std::vector<Positioning>& steps, const Zone& zone,
                                 const QLocale& locale);

std::vector<Column<CauseRow>> cause_columns(const QLocale& locale);
std::vector<Column<PaceRow>> pace_columns(const QString& title, const QLocale& locale);
std::vector<Column<DelayLine>> delay_columns(const QLocale& locale);
std::vector<Column<StepLine>> step_columns(const QLocale& locale);

}  // namespace spoilbook::form
