// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/forecast_rows.h"

#include <algorithm>

#include "forms/works/forecast_words.h"
#include "forms/works/say.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Forecast", text);
}

using Percentile = std::optional<Day> Dates::*;

Column<ForecastRow> dates_column(const QString& title, Percentile percentile, const QString& tip,
                                 const QLocale& locale) {
    return Column<ForecastRow>(title, {},
                               [=](const ForecastRow& r) {
                                   if (!r.known) return tr("cannot tell");
                                   const auto& day = r.dates.*percentile;
                                   return day ? day_shown(*day, locale) : tr("not in sight");
                               })
        .number([percentile](const ForecastRow& r) -> std::optional<double> {
            const auto& day = r.dates.*percentile;
            if (!day) return std::nullopt;
            return days_between(*day, Day{1970, 1, 1});
        })
        .copied_as([percentile](const ForecastRow& r) {
            const auto& day = r.dates.*percentile;
            return day ? QString::fromStdString(day_text(*day)) : QString();
        })
        .tip(tip);
}

std::vector<ForecastRow> rows_of(const Forecast& forecast) {
    std::vector<ForecastRow> rows;
    if (!forecast.why_none.empty()) return rows;
    rows.push_back({tr("target"), tr("all that is planned is dredged"), forecast.target, true, {}});
    for (const LimitForecast& limit : forecast.limits) {
        rows.push_back({tr("condition %1").arg(limit_name(limit.state)),
                        book_text(limit.state.condition->text), limit.dates,
                        limit.p_before_target.has_value(), limit.p_before_target});
    }
    if (forecast.season_closes) {
        const auto& day = forecast.season_closes;
        rows.push_back({tr("season's end"), tr("first day on which all work is forbidden"),
                        Dates{day, day, day, 1}, true, forecast.p_season_before_target});
    }
    return rows;
}

ForecastRow as_logged_row(ForecastRow row) {
    row.name = tr("%1, as logged").arg(row.name);
    return row;
}

}  // namespace

std::vector<ForecastRow> forecast_rows(const Forecast& forecast, const Forecast* as_logged) {
    std::vector<ForecastRow> rows = rows_of(forecast);
    if (!as_logged) return rows;
    std::vector<ForecastRow> both;
    std::vector<ForecastRow> logged = rows_of(*as_logged);
    // A season's end may be in one of the two alone; limits are the same in both.
    for (ForecastRow& row : rows) {
        const auto as_it_is = std::find_if(logged.begin(), logged.end(),
                                           [&](const ForecastRow& other) { return other.name == row.name; });
        both.push_back(std::move(row));
        if (as_it_is == logged.end()) continue;
        both.push_back(as_logged_row(std::move(*as_it_is)));
        logged.erase(as_it_is);
    }
    for (ForecastRow& row : logged)
        both.push_back(as_logged_row(std::move(row)));
    return both;
}

std::vector<Column<ForecastRow>> forecast_columns(const QLocale& locale) {
    using Row = ForecastRow;
    const auto p_text = [locale](const Row& r) {
        return r.p_before_target ? chance_shown(*r.p_before_target, locale) : QStringLiteral("–");
    };
    return {
        Column<Row>(tr("What comes"), {}, [](const Row& r) { return r.name; }),
        dates_column(tr("1 in 10"), &Dates::p10, tr("One time in ten it comes by this day"), locale),
        dates_column(tr("Even"), &Dates::p50, tr("By this day it comes as likely as not"), locale),
        dates_column(tr("9 in 10"), &Dates::p90, tr("Nine times in ten it comes by this day"), locale),
        Column<Row>(tr("Before the target"), {}, p_text)
            .number([](const Row& r) { return r.p_before_target; })
            .tip(tr("How likely it is that it comes before the target is reached")),
        Column<Row>(tr("What"), {}, [](const Row& r) { return r.what; }),
    };
}

}  // namespace spoilbook::form
