// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/pace_rows.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Pace", text);
}

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

DelayLine delay_line(const Delay& delay, const QString& shift, const Zone& zone, const QLocale& locale) {
    DelayLine line;
    line.shift = shift;
    line.cause = delay.cause.empty() ? tr("no cause recorded") : shown(delay.cause);
    line.from_text = moment_shown(*delay.start, zone, locale);
    line.from_copy = shown(instant_text(*delay.start, zone));
    line.remarks = shown(delay.remarks);
    if (delay.end) line.minutes = double(*delay.end - *delay.start) / double(ms_per_minute);
    return line;
}

QString shift_name(const std::vector<const Shift*>& shifts, const Id& id) {
    const auto found =
        std::find_if(shifts.begin(), shifts.end(), [&](const Shift* shift) { return shift->id == id; });
    return found == shifts.end() ? QString() : shown((*found)->shift);
}

std::vector<DelayLine> delay_lines(const std::vector<const Delay*>& delays,
                                   const std::vector<const Shift*>& shifts, const Zone& zone,
                                   const QLocale& locale) {
    std::vector<DelayLine> lines;
    for (const Delay* delay : delays)
        lines.push_back(delay_line(*delay, shift_name(shifts, delay->shift), zone, locale));
    return lines;
}

PaceRow pace_row(const ProductivityRow& made, HoursOver over, const QLocale& locale) {
    PaceRow row;
    row.key = shown(made.time.key);
    if (over == HoursOver::week) {
        if (const auto monday = parse_day(made.time.key)) row.key = day_shown(*monday, locale);
    }
    row.from = made.time.from;
    row.shifts = double(made.time.shifts.size());
    row.shift_h = made.time.shift_h;
    row.operating_h = made.time.digging_h;
    row.delay_h = made.time.delay_h();
    row.not_accounted_h = made.time.not_accounted_h;
    row.loads = double(made.loads.size());
    row.unknown = double(made.unknown);
    if (made.loads.size() > made.unknown) {
        row.in_situ_m3 = made.in_situ_m3.value;
        row.in_situ_u_m3 = made.in_situ_m3.u();
    }
    // A week of no digging has no rate; a rate of what is known alone would be too low.
    if (const auto rate = made.per_operating_hour(); rate && made.unknown == 0 && !made.loads.empty()) {
        row.rate = rate->value;
        row.rate_u = rate->u();
    }
    if (row.shift_h > 0) row.efficiency = 100 * made.efficiency();
    for (const Shift* shift : made.time.shifts)
        row.shift_names.push_back(shown(shift->shift));
    return row;
}

template <class Row>
Column<Row> numbers(const QString& title, const QString& unit, int decimals, const QLocale& locale,
                    std::function<std::optional<double>(const Row&)> of,
                    QString (*text)(double, int, const QLocale&) = &number_shown) {
    return Column<Row>(title, unit,
                       [=](const Row& row) {
                           const auto value = of(row);
                           return value ? text(*value, decimals, locale) : QString();
                       })
        .number(of);
}

}  // namespace

std::vector<CauseRow> cause_rows(const HoursRow& all, const Zone& zone, const QLocale& locale) {
    std::vector<CauseRow> rows;
    rows.push_back({tr("digging"), all.digging_h, 100 * all.share(all.digging_h), {}, false});
    for (const CauseHours& cause : all.causes) {
        rows.push_back({cause.cause.empty() ? tr("no cause recorded") : shown(cause.cause), cause.hours,
                        100 * all.share(cause.hours), delay_lines(cause.delays, all.shifts, zone, locale),
                        true});
    }
    rows.push_back(
        {tr("not accounted for"), all.not_accounted_h, 100 * all.share(all.not_accounted_h), {}, false});
    return rows;
}

std::vector<PaceRow> pace_rows(const Productivity& made, const Zone& zone, HoursOver over,
                               const QLocale& locale) {
    std::vector<PaceRow> rows;
    for (const ProductivityRow& one : made.rows) {
        PaceRow row = pace_row(one, over, locale);
        if (over == HoursOver::shift) {
            for (const CauseHours& cause : one.time.causes) {
                auto lines = delay_lines(cause.delays, one.time.shifts, zone, locale);
                row.delays.insert(row.delays.end(), lines.begin(), lines.end());
            }
        }
        rows.push_back(std::move(row));
    }
    // The newest first: that is what one asks about.
    std::reverse(rows.begin(), rows.end());
    return rows;
}

std::vector<StepLine> step_lines(const std::vector<Positioning>& steps, const Zone& zone,
                                 const QLocale& locale) {
    std::vector<StepLine> lines;
    for (const Positioning& step : steps) {
        lines.push_back({shown(step.shift->shift), shown(step.from->station), shown(step.to->station),
                         moment_shown(step.time.from, zone, locale),
                         shown(instant_text(step.time.from, zone)), step.minutes, step.delayed_minutes});
    }
    std::reverse(lines.begin(), lines.end());
    return lines;
}

std::vector<Column<CauseRow>> cause_columns(const QLocale& locale) {
    using Row = CauseRow;
    return {Column<Row>(tr("Cause"), {}, [](const Row& r) { return r.cause; }),
            numbers<Row>(tr("Hours"), tr("h"), 1, locale, [](const Row& r) { return r.hours; }),
            numbers<Row>(tr("Of shift hours"), QStringLiteral("%"), 1, locale,
                         [](const Row& r) { return r.share; }),
            numbers<Row>(tr("Delays"), {}, 0, locale, [](const Row& r) {
                return r.is_delay ? std::optional(double(r.delays.size())) : std::nullopt;
            })};
}

std::vector<Column<PaceRow>> pace_columns(const QString& title, const QLocale& locale) {
    using Row = PaceRow;
    return {
        Column<Row>(title, {}, [](const Row& r) { return r.key; }),
        numbers<Row>(tr("Shift hours"), tr("h"), 1, locale, [](const Row& r) { return r.shift_h; }),
        numbers<Row>(tr("Operating"), tr("h"), 1, locale, [](const Row& r) { return r.operating_h; }),
        numbers<Row>(tr("Delays"), tr("h"), 1, locale, [](const Row& r) { return r.delay_h; }),
        numbers<Row>(tr("Not accounted for"), tr("h"), 1, locale,
                     [](const Row& r) { return r.not_accounted_h; }),
        numbers<Row>(tr("Efficiency"), QStringLiteral("%"), 0, locale,
                     [](const Row& r) { return r.efficiency; }),
        numbers<Row>(tr("Loads"), {}, 0, locale, [](const Row& r) { return r.loads; }),
        numbers<Row>(tr("Unknown"), {}, 0, locale, [](const Row& r) { return r.unknown; })
            .tip(tr("Loads that no method can value: not zero")),
        numbers<Row>(tr("In situ"), tr("m³"), 0, locale, [](const Row& r) { return r.in_situ_m3; }),
        numbers<Row>(
            tr("± u"), tr("m³"), 0, locale, [](const Row& r) { return r.in_situ_u_m3; }, &rounded_up),
        numbers<Row>(tr("Operating hour"), tr("m³/h"), 1, locale, [](const Row& r) { return r.rate; })
            .tip(tr("In-situ m³ an operating hour")),
        numbers<Row>(
            tr("± u "), tr("m³/h"), 1, locale, [](const Row& r) { return r.rate_u; }, &rounded_up),
    };
}

std::vector<Column<DelayLine>> delay_columns(const QLocale& locale) {
    using Row = DelayLine;
    return {
        Column<Row>(tr("Began"), {}, [](const Row& r) { return r.from_text; }).copied_as([](const Row& r) {
            return r.from_copy;
        }),
        Column<Row>(tr("Shift"), {}, [](const Row& r) { return r.shift; }),
        Column<Row>(tr("Cause"), {}, [](const Row& r) { return r.cause; }),
        numbers<Row>(tr("Lasted"), tr("min"), 0, locale,
                     [](const Row& r) { return r.minutes > 0 ? std::optional(r.minutes) : std::nullopt; }),
        Column<Row>(tr("Remarks"), {}, [](const Row& r) { return r.remarks; })};
}

std::vector<Column<StepLine>> step_columns(const QLocale& locale) {
    using Row = StepLine;
    return {
        Column<Row>(tr("Spuds up"), {}, [](const Row& r) { return r.at_text; }).copied_as([](const Row& r) {
            return r.at_copy;
        }),
        Column<Row>(tr("Shift"), {}, [](const Row& r) { return r.shift; }),
        Column<Row>(tr("From"), {}, [](const Row& r) { return r.from; }),
        Column<Row>(tr("To"), {}, [](const Row& r) { return r.to; }),
        numbers<Row>(tr("Positioning"), tr("min"), 0, locale, [](const Row& r) { return r.minutes; }),
        numbers<Row>(tr("Delays taken out"), tr("min"), 0, locale, [](const Row& r) { return r.delayed; })};
}

}  // namespace spoilbook::form
