// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLocale>

#include "forms/shared/table_model.h"
#include "forms/works/bed_plot.h"
#include "model/answer/reconciliation.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// One claim-period, ready to be read.
struct PeriodRow {
    QString name, claim, span, why;  ///< why: of cannot tell, or what was taken
    std::size_t loads = 0;
    std::optional<Measured> barges, bed, difference, closing;
    std::optional<double> e_n;
    State state = State::unknown;
    QString word;
};

/// What all claim-periods say of one material's bulking factor.
struct ProposalRow {
    QString material;
    std::optional<double> prior, prior_u, fit, fit_u, low, high, p_value;
    double chi_square = 0;
    int dof = 0;
    QString why_not, evidence;              ///< evidence: labels with ; between, as the book has them
    std::optional<Instant> from, asked_at;  ///< first survey's end of day; the as-at
};

std::vector<PeriodRow> period_rows(const Reconciliation& reconciliation, const Zone& zone,
                                   const QLocale& locale);
std::vector<ProposalRow> proposal_rows(const Reconciliation& reconciliation);
std::vector<Column<PeriodRow>> period_columns(const QLocale& locale);
std::vector<Column<ProposalRow>> proposal_columns(const QLocale& locale);
BedPlotData bed_plot_data(const std::vector<PeriodRow>& rows);
/// "6 claim-periods: 5 agree, 1 disagrees. …"
QString reconcile_sentence(const Reconciliation& reconciliation, const QLocale& locale);

}  // namespace spoilbook::form
