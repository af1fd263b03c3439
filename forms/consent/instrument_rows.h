// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "model/answer/instrument_stands.h"
#include "model/answer/threshold_versions.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// How an instrument stood at the as-at: "calibration expired" ■.
struct InstrumentWord {
    State state = State::unknown;
    QString word;
};
InstrumentWord instrument_word(const InstrumentStand& stand, Instant as_at);

/// `as_at` is asked whenever a cell is shown.
std::vector<Column<InstrumentStand>> instrument_columns(const std::function<Instant()>& as_at,
                                                        const Zone& zone, const QLocale& locale);
std::vector<Column<ThresholdVersion>> threshold_columns(const Zone& zone, const QLocale& locale);

}  // namespace spoilbook::form
