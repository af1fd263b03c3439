// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/solids_rows.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

constexpr int line_steps = 60;

QString tr(const char* text) {
    return QCoreApplication::translate("SolidsSheet", text);
}

/// Three figures: the second decimal of 0.52, none of 148.
QString three_figures(double value, const QLocale& locale) {
    const int whole = value > 0 ? int(std::floor(std::log10(value))) : 0;
    return number_shown(value, std::clamp(2 - whole, 0, 4), locale);
}

QString unit_of(const SiteSolids& solids) {
    return solids.unit.empty() ? tr("unit not recorded") : QString::fromStdString(solids.unit);
}

/// An axis of logarithms from the least to the greatest, with ticks at 1, 2 and 5 of each power.
ChartAxis log_axis(const QString& title, double least, double greatest, const QLocale& locale) {
    ChartAxis axis;
    axis.title = title;
    axis.least = std::log10(least) - 0.05;
    axis.most = std::log10(greatest) + 0.05;
    for (int power = int(std::floor(axis.least)); power <= int(std::ceil(axis.most)); ++power) {
        for (const int digit : {1, 2, 5}) {
            const double at = power + std::log10(digit);
            if (at < axis.least || at > axis.most) continue;
            axis.ticks.push_back({at, number_shown(std::pow(10, at), std::max(0, -power), locale)});
        }
    }
    axis.words = [locale](double at) { return three_figures(std::pow(10, at), locale); };
    return axis;
}

struct Reach {
    double least = 1e300, greatest = 0;
    void take(double value) {
        least = std::min(least, value);
        greatest = std::max(greatest, value);
    }
};

}  // namespace

QString solids_sentence(const SiteSolids& solids, const QLocale& locale) {
    const QString site = QString::fromStdString(solids.site);
    if (!solids.line)
        return tr("%1: turbidity is not made suspended solids: %2.").arg(site, book_text(solids.why));
    const SolidsRegression& line = *solids.line;
    return tr("%1: log₁₀ S = %2 + %3 · log₁₀ T, from %4 samples of %5 to %6 %7; R² %8, standard error %9 "
              "log₁₀ units, smearing factor %10 (Duan). It holds at this site alone.")
        .arg(site, number_shown(line.intercept, 4, locale), number_shown(line.slope, 4, locale),
             locale.toString(qulonglong(line.n)), three_figures(line.least, locale),
             three_figures(line.greatest, locale), unit_of(solids), number_shown(line.r2, 3, locale),
             number_shown(line.standard_error, 4, locale))
        .arg(number_shown(line.smearing, 4, locale));
}

QString solids_at_words(const SiteSolids& solids, double turbidity, const QLocale& locale) {
    const SolidsEstimate at = solids_at(*solids.line, turbidity, solids_probability);
    QString words =
        tr("%1 mg/L; a new sample lies within %2 to %3 mg/L with %4 %.")
            .arg(three_figures(at.solids_mg_l, locale), three_figures(at.low, locale),
                 three_figures(at.high, locale), number_shown(100 * solids_probability, 0, locale));
    if (at.extrapolated)
        words +=
            u' ' + tr("This is outside the turbidities of the samples: nothing shows that the line holds "
                      "there.");
    return words;
}

ChartData solids_chart(const SiteSolids& solids, const QLocale& locale) {
    ChartData chart;
    chart.title = tr("Suspended solids against turbidity");
    chart.sentence = tr("Samples, the line with its smearing factor, and the interval in which a new sample "
                        "lies with %1 %.")
                         .arg(number_shown(100 * solids_probability, 0, locale));
    chart.empty_text = tr("No sample of this site has both a turbidity and suspended solids by the as-at.");
    ChartSeries dots{tr("samples"), SeriesKind::dots, 1, {}};
    Reach x, y;
    for (const SolidsPoint& point : solids.points) {
        if (!point.left_out.empty()) continue;
        dots.points.emplace_back(std::log10(*point.sample.turbidity), std::log10(*point.sample.solids_mg_l));
        x.take(*point.sample.turbidity);
        y.take(*point.sample.solids_mg_l);
    }
    if (dots.points.empty()) return chart;
    if (solids.line) {
        ChartSeries line{tr("line"), SeriesKind::line, 2, {}};
        ChartSeries band{tr("interval of a new sample"), SeriesKind::band, 2, {}, {}};
        const double from = std::log10(x.least), to = std::log10(x.greatest);
        for (int i = 0; i <= line_steps; ++i) {
            const double at = from + (to - from) * i / line_steps;
            const SolidsEstimate said = solids_at(*solids.line, std::pow(10, at), solids_probability);
            line.points.emplace_back(at, std::log10(said.solids_mg_l));
            band.points.emplace_back(at, std::log10(said.low));
            band.upper.emplace_back(at, std::log10(said.high));
            y.take(said.low);
            y.take(said.high);
        }
        chart.series = {band, line};
    }
    chart.series.push_back(dots);
    chart.x = log_axis(tr("turbidity, %1").arg(unit_of(solids)), x.least, x.greatest, locale);
    chart.y = log_axis(tr("suspended solids, mg/L"), y.least, y.greatest, locale);
    return chart;
}

std::vector<Column<SolidsPoint>> solids_columns(const QString& unit, const Zone& zone,
                                                const QLocale& locale) {
    using Row = SolidsPoint;
    const auto number = [&](const QString& title, const QString& of, auto value) {
        return Column<Row>(title, of,
                           [=](const Row& row) {
                               const std::optional<double> held = value(row);
                               return held ? number_shown(*held, 1, locale) : QStringLiteral("–");
                           })
            .number(value);
    };
    const auto turbidity = [](const Row& row) { return row.sample.turbidity; };
    const auto mass = [](const Row& row) { return row.sample.solids_mg_l; };
    return {Column<Row>(tr("Taken"), {},
                        [=](const Row& row) {
                            return row.sample.time ? moment_shown(*row.sample.time, zone, locale)
                                                   : QStringLiteral("–");
                        })
                .copied_as([=](const Row& row) {
                    return row.sample.time ? QString::fromStdString(instant_text(*row.sample.time, zone))
                                           : QString();
                }),
            number(tr("Turbidity"), unit, turbidity),
            number(tr("Suspended solids"), QStringLiteral("mg/L"), mass),
            Column<Row>(tr("In the line"), {},
                        [](const Row& row) {
                            return row.left_out.empty() ? tr("yes")
                                                        : tr("no: %1").arg(book_text(row.left_out));
                        })
                .mark([](const Row& row) {
                    return std::optional(row.left_out.empty() ? State::clear : State::unknown);
                }),
            Column<Row>(tr("Laboratory"), {}, [](const Row& row) { return book_text(row.sample.lab); }),
            Column<Row>(tr("By"), {}, [](const Row& row) { return book_text(row.sample.by); })};
}

}  // namespace spoilbook::form
