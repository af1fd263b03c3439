// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/reconcile_rows.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Reconcile", text);
}

QString shown(std::string_view text) {
    return QString::fromUtf8(text.data(), qsizetype(text.size()));
}

State state_of(Held held) {
    if (held == Held::agree) return State::clear;
    return held == Held::disagree ? State::attention : State::unknown;
}

QString word_of_held(Held held) {
    if (held == Held::agree) return tr("agree");
    return held == Held::disagree ? tr("disagree") : tr("cannot tell");
}

QString number(std::optional<double> value, int decimals, const QLocale& locale) {
    return value ? number_shown(*value, decimals, locale) : QStringLiteral("–");
}

QString plus_minus(std::optional<double> u, int decimals, const QLocale& locale) {
    return u ? rounded_up(*u, decimals, locale) : QStringLiteral("–");
}

template <class Row, class Get>
void add_measured(std::vector<Column<Row>>& columns, const QString& title, const QString& unit, int decimals,
                  const QLocale& locale, Get get) {
    const auto value = [get](const Row& row) {
        return get(row) ? std::optional(get(row)->value) : std::nullopt;
    };
    const auto u = [get](const Row& row) { return get(row) ? std::optional(get(row)->u) : std::nullopt; };
    columns.push_back(Column<Row>(title, unit, [=](const Row& row) {
                          return number(value(row), decimals, locale);
                      }).number(value));
    columns.push_back(Column<Row>(tr("± u"), {}, [=](const Row& row) {
                          return plus_minus(u(row), decimals, locale);
                      }).number(u));
}

}  // namespace

std::vector<PeriodRow> period_rows(const Reconciliation& reconciliation, const Zone& zone,
                                   const QLocale& locale) {
    std::vector<PeriodRow> rows;
    for (const ReconciledPeriod& period : reconciliation.periods) {
        PeriodRow row;
        row.name = shown(period.row->removed);
        row.claim = period.claim ? shown(period.claim->claim) : tr("none named");
        if (period.from && period.to) {
            row.span = tr("%1 to %2")
                           .arg(day_shown(zone.day_of(*period.from), locale),
                                day_shown(zone.day_of(*period.to), locale));
        }
        row.loads = period.loads.loads;
        row.barges = Measured{period.loads.in_situ_m3.value, period.loads.in_situ_m3.u()};
        if (period.balance) {
            row.bed = period.balance->bed;
            row.difference = period.balance->difference;
            row.e_n = period.balance->e_n;
            row.closing = period.balance->closing_factor;
        }
        row.state = state_of(period.held);
        row.word = word_of_held(period.held);
        QStringList why;
        if (!period.why.empty()) why << shown(period.why);
        for (const std::string_view taken : period.assumed)
            why << shown(taken);
        for (const auto& [label, reason] : reconciliation.left_out) {
            if (label == period.row->removed) why << tr("not asked for the factor: %1").arg(shown(reason));
        }
        row.why = why.join(QStringLiteral("; "));
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<ProposalRow> proposal_rows(const Reconciliation& reconciliation) {
    std::vector<ProposalRow> rows;
    for (const FactorProposal& proposal : reconciliation.proposals) {
        ProposalRow row;
        row.material = proposal.material ? shown(proposal.material->material) : tr("none named");
        if (proposal.prior) {
            row.prior = proposal.prior->value;
            row.prior_u = proposal.prior->u;
        }
        if (proposal.fit) {
            row.fit = proposal.fit->value;
            row.fit_u = proposal.fit->u;
            row.low = proposal.fit->low;
            row.high = proposal.fit->high;
        }
        row.why_not = shown(proposal.why_not);
        row.chi_square = proposal.chi_square;
        row.dof = proposal.dof;
        row.p_value = proposal.p_value;
        QStringList evidence;
        for (const std::string& label : proposal.evidence)
            evidence << shown(label);
        row.evidence = evidence.join(u';');
        for (const ReconciledPeriod& period : reconciliation.periods) {
            const bool is_evidence = evidence.contains(shown(period.row->removed));
            if (is_evidence && period.from && (!row.from || *period.from < *row.from)) row.from = period.from;
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<Column<PeriodRow>> period_columns(const QLocale& locale) {
    using Row = PeriodRow;
    const QString m3 = QStringLiteral("m³");
    std::vector<Column<Row>> columns{
        Column<Row>(tr("Claim"), {}, [](const Row& row) { return row.claim; }),
        Column<Row>(tr("Stands"), {}, [](const Row& row) { return row.word; }).mark([](const Row& row) {
            return std::optional(row.state);
        }),
        Column<Row>(tr("E_n"), {}, [locale](const Row& row) { return number(row.e_n, 2, locale); })
            .number([](const Row& row) { return row.e_n; })
            .tip(tr("Their difference over its expanded uncertainty; over 1 they disagree")),
    };
    add_measured(columns, tr("Barges"), m3, 0, locale, [](const Row& row) { return row.barges; });
    add_measured(columns, tr("Bed"), m3, 0, locale, [](const Row& row) { return row.bed; });
    add_measured(columns, tr("Difference"), m3, 0, locale, [](const Row& row) { return row.difference; });
    add_measured(columns, tr("B would be"), {}, 3, locale, [](const Row& row) { return row.closing; });
    columns.push_back(Column<Row>(tr("Loads"), {}, [locale](const Row& row) {
                          return locale.toString(qulonglong(row.loads));
                      }).number([](const Row& row) { return std::optional(double(row.loads)); }));
    columns.push_back(Column<Row>(tr("Loads from"), {}, [](const Row& row) { return row.span; }));
    columns.push_back(Column<Row>(tr("Claim-period"), {}, [](const Row& row) { return row.name; }));
    columns.push_back(Column<Row>(tr("Said of it"), {}, [](const Row& row) { return row.why; }));
    return columns;
}

std::vector<Column<ProposalRow>> proposal_columns(const QLocale& locale) {
    using Row = ProposalRow;
    const auto shown = [locale](const QString& title, std::optional<double> Row::*member, auto* text) {
        return Column<Row>(title, {}, [=](const Row& row) { return text(row.*member, 3, locale); })
            .number([=](const Row& row) { return row.*member; });
    };
    const auto value = [shown](const QString& title, auto member) { return shown(title, member, &number); };
    const auto u = [shown](auto member) { return shown(tr("± u"), member, &plus_minus); };
    return {
        Column<Row>(tr("Bulking factor of"), {}, [](const Row& row) { return row.material; }),
        value(tr("In force"), &Row::prior),
        u(&Row::prior_u),
        value(tr("Proposed"), &Row::fit),
        u(&Row::fit_u),
        Column<Row>(
            tr("95 %"), {},
            [locale](const Row& row) {
                return row.low ? tr("%1 to %2").arg(number(row.low, 3, locale), number(row.high, 3, locale))
                               : row.why_not;
            }),
        Column<Row>(tr("χ²"), {},
                    [locale](const Row& row) {
                        return tr("%1 on %2").arg(number(row.chi_square, 1, locale)).arg(row.dof);
                    })
            .number([](const Row& row) { return std::optional(row.chi_square); }),
        Column<Row>(tr("p"), {}, [locale](const Row& row) { return number(row.p_value, 2, locale); })
            .number([](const Row& row) { return row.p_value; })
            .tip(tr("How often chance alone would scatter the claim-periods as much; under 0.05 something "
                    "else is wrong too")),
        Column<Row>(tr("Rests on"), {}, [](const Row& row) { return row.evidence; }),
    };
}

BedPlotData bed_plot_data(const std::vector<PeriodRow>& rows) {
    BedPlotData data;
    data.across = tr("by the bed, in situ, m³; bars ± 2u");
    data.up = tr("by the barges, in situ, m³");
    data.on_line = tr("on the line both say the same");
    data.empty_text =
        tr("No claim has been surveyed twice yet: what a survey says was removed is typed "
           "among the records, as Removed.");
    for (const PeriodRow& row : rows) {
        if (row.bed && row.barges) data.points.push_back({row.claim, *row.bed, *row.barges, row.state});
    }
    return data;
}

QString reconcile_sentence(const Reconciliation& reconciliation, const QLocale& locale) {
    if (reconciliation.periods.empty())
        return tr("Nothing to hold the barges against: no claim has been surveyed twice by the as-at.");
    const auto count = [&](Held held) {
        return std::count_if(reconciliation.periods.begin(), reconciliation.periods.end(),
                             [held](const ReconciledPeriod& one) { return one.held == held; });
    };
    QString sentence = tr("Claim-periods: %1 agree, %2 disagree, %3 cannot be told.")
                           .arg(count(Held::agree))
                           .arg(count(Held::disagree))
                           .arg(count(Held::cannot_tell));
    if (reconciliation.p_value) {
        const bool odd = *reconciliation.p_value < 0.05;
        sentence += u' ' + (odd ? tr("With the proposed factors they still scatter more than they admit to "
                                     "(χ² %1 on %2, p %3).")
                                : tr("With the proposed factors all of them fit (χ² %1 on %2, p %3)."))
                               .arg(number(reconciliation.chi_square, 1, locale))
                               .arg(reconciliation.dof)
                               .arg(number(reconciliation.p_value, 2, locale));
    }
    return sentence;
}

}  // namespace spoilbook::form
