// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/table_model.h"
#include "forms/works/limit_rows.h"
#include "forms/works/load_ask.h"
#include "model/answer/evidence.h"

namespace spoilbook::form {

/// One line behind a limit's number, ready to be read.
struct EvidenceRow {
    QString trip, load, barge, method, at_text, at_copy;
    Instant at;
    std::optional<double> amount, u;
    bool opening = false;
};

/// `counts_once`: the limit counts trips or days, not an amount.
std::vector<EvidenceRow> evidence_rows(const std::vector<EvidenceLine>& lines, const LimitState& state,
                                       const Season& season, const QLocale& locale);
std::vector<Column<EvidenceRow>> evidence_columns(const LimitRow& limit, const QLocale& locale);

/// What stands on the sheet: the condition in words, then everything its number is made of.
/// Enter or a double click on a row asks for its load.
QWidget* evidence_page(const LimitRow& limit, std::vector<EvidenceRow> rows, const QLocale& locale,
                       const OpensLoad& open_load, QWidget* parent);

}  // namespace spoilbook::form
