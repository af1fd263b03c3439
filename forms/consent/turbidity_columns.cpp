// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <cmath>

#include "forms/consent/turbidity_rows.h"
#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TurbidityLeaf", text);
}

QString number_or_dash(const std::optional<double>& value, int decimals, const QLocale& locale) {
    return value ? number_shown(*value, decimals, locale) : QStringLiteral("–");
}

template <class Row>
Column<Row> time_column(const QString& title, std::optional<Instant> (*at)(const Row&), const Zone& zone,
                        const QLocale& locale) {
    return Column<Row>(title, {},
                       [=](const Row& row) {
                           const auto time = at(row);
                           return time ? moment_shown(*time, zone, locale) : QStringLiteral("–");
                       })
        .copied_as([=](const Row& row) {
            const auto time = at(row);
            return time ? QString::fromStdString(instant_text(*time, zone)) : QString();
        });
}

/// Ten boxes, as many full as there are tenths whole: 99 % is not full.
QString share_bar(const std::optional<double>& share) {
    if (!share) return {};
    const int full = std::min(10, int(std::floor(*share * 10 + 1e-9)));
    return QString(full, QChar(0x25A0)) + QString(10 - full, QChar(0x25A1));
}

std::optional<State> flag_state(const ReadingRow& row) {
    switch (row.flag) {
        case Flag::pass:
        case Flag::not_evaluated:
            return State::clear;
        case Flag::suspect:
            return State::attention;
        case Flag::fail:
            return State::hold;
        case Flag::missing:
            break;
    }
    return State::unknown;
}

QString tests_failed(const ReadingRow& row) {
    QStringList said;
    const auto add = [&](Flag flag, const QString& name) {
        if (flag == Flag::suspect || flag == Flag::fail)
            said << QStringLiteral("%1: %2").arg(name, flag_word(flag));
    };
    add(row.verdicts.range, tr("range"));
    add(row.verdicts.spike, tr("spike"));
    add(row.verdicts.rate, tr("rate"));
    add(row.verdicts.flat, tr("flat"));
    if (overall(row.verdicts) != row.flag) said << tr("set by a person");
    return said.join(QStringLiteral(", "));
}

template <class Row, class Get>
Column<Row> count_column(const QString& title, Get get, const QLocale& locale) {
    return Column<Row>(title, {}, [=](const Row& row) { return locale.toString(qulonglong(get(row))); })
        .number([=](const Row& row) { return std::optional(double(get(row))); });
}

template <class Row, class Get>
Column<Row> value_column(const QString& title, Get get, const QLocale& locale) {
    return Column<Row>(title, {}, [=](const Row& row) { return number_or_dash(get(row), 2, locale); })
        .number([=](const Row& row) -> std::optional<double> { return get(row); });
}

}  // namespace

std::vector<Column<TriggerRow>> trigger_columns(const Zone& zone, const QLocale& locale) {
    using Row = TriggerRow;
    const auto text = [](const QString& title, QString Row::*member) {
        return Column<Row>(title, {}, [member](const Row& row) { return row.*member; });
    };
    return {
        Column<Row>(tr("State"), {}, [](const Row& row) { return row.word; }).mark([](const Row& row) {
            return std::optional(row.state);
        }),
        text(tr("Condition"), &Row::condition),
        text(tr("Tier"), &Row::tier),
        text(tr("Site"), &Row::site),
        time_column<Row>(
            tr("Over since"), [](const Row& row) { return std::optional(row.over_since); }, zone, locale),
        time_column<Row>(
            tr("Passed"), [](const Row& row) { return std::optional(row.start); }, zone, locale),
        Column<Row>(tr("Peak"), {},
                    [locale](const Row& row) { return number_shown(row.peak, 1, locale) + u' ' + row.unit; })
            .number([](const Row& row) { return std::optional(row.peak); }),
        time_column<Row>(
            tr("Answer due"), [](const Row& row) { return row.due; }, zone, locale),
        text(tr("Clock"), &Row::clock),
        text(tr("Answer"), &Row::answer),
        time_column<Row>(
            tr("All-clear"), [](const Row& row) { return row.end; }, zone, locale),
    };
}

std::vector<Column<MonthRow>> month_columns(const QLocale& locale) {
    using Row = MonthRow;
    return {
        Column<Row>(tr("Month"), {},
                    [locale](const Row& row) { return month_shown(row.month.toStdString(), locale); })
            .copied_as([](const Row& row) { return row.month; }),
        Column<Row>(tr("Site"), {}, [](const Row& row) { return row.site; }),
        // Rounded down: nothing is whole that is not.
        Column<Row>(tr("Complete"), tr("%"),
                    [locale](const Row& row) {
                        return row.share ? rounded_down(*row.share * 100, 1, locale) : QStringLiteral("–");
                    })
            .number(
                [](const Row& row) { return row.share ? std::optional(*row.share * 100) : std::nullopt; }),
        Column<Row>(QString(), {}, [](const Row& row) { return share_bar(row.share); })
            .copied_as([](const Row&) { return QString(); }),
        count_column<Row>(
            tr("Counted"), [](const Row& row) { return row.sum.counted; }, locale),
        Column<Row>(tr("Expected"), {},
                    [locale](const Row& row) { return number_shown(row.expected, 0, locale); })
            .number([](const Row& row) { return std::optional(row.expected); }),
        count_column<Row>(
            tr("Suspect"), [](const Row& row) { return row.sum.suspect; }, locale),
        count_column<Row>(
            tr("Failed"), [](const Row& row) { return row.sum.failed; }, locale),
        count_column<Row>(
            tr("Missing"), [](const Row& row) { return row.sum.missing; }, locale),
        value_column<Row>(
            tr("Median"), [](const Row& row) { return row.sum.middle; }, locale),
        value_column<Row>(
            tr("Greatest"), [](const Row& row) { return row.sum.high; }, locale),
    };
}

std::vector<Column<ReadingRow>> reading_columns(const Zone& zone, const QLocale& locale) {
    using Row = ReadingRow;
    return {
        time_column<Row>(
            tr("Time"), [](const Row& row) { return std::optional(row.at); }, zone, locale),
        Column<Row>(tr("Site"), {}, [](const Row& row) { return row.site; }),
        value_column<Row>(
            tr("Reading"), [](const Row& row) { return row.value; }, locale),
        Column<Row>(tr("Flag"), {}, [](const Row& row) { return flag_word(row.flag); }).mark(flag_state),
        Column<Row>(tr("Why"), {}, tests_failed),
    };
}

std::vector<Column<ViewRow>> view_columns(const Zone& zone, const QLocale& locale) {
    using Row = ViewRow;
    return {
        time_column<Row>(
            tr("From"), [](const Row& row) { return std::optional(row.from); }, zone, locale),
        Column<Row>(tr("Site"), {}, [](const Row& row) { return row.site; }),
        count_column<Row>(
            tr("Readings"), [](const Row& row) { return row.sum.readings; }, locale),
        value_column<Row>(
            tr("Least"), [](const Row& row) { return row.sum.low; }, locale),
        value_column<Row>(
            tr("Median"), [](const Row& row) { return row.sum.middle; }, locale),
        value_column<Row>(
            tr("Greatest"), [](const Row& row) { return row.sum.high; }, locale),
        value_column<Row>(
            tr("Raw greatest"), [](const Row& row) { return row.sum.raw_high; }, locale),
        count_column<Row>(
            tr("Suspect"), [](const Row& row) { return row.sum.suspect; }, locale),
        count_column<Row>(
            tr("Failed"), [](const Row& row) { return row.sum.failed; }, locale),
        Column<Row>(tr("Condition"), {}, [](const Row& row) { return row.condition; }),
        value_column<Row>(
            tr("Statistic, least"), [](const Row& row) { return row.statistic_low; }, locale),
        value_column<Row>(
            tr("Statistic, greatest"), [](const Row& row) { return row.statistic_high; }, locale),
        value_column<Row>(
            tr("Level, least"), [](const Row& row) { return row.level_low; }, locale),
        value_column<Row>(
            tr("Level, greatest"), [](const Row& row) { return row.level_high; }, locale),
    };
}

}  // namespace spoilbook::form
