// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/instrument_rows.h"

#include <QCoreApplication>
#include <cmath>

#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("InstrumentsPart", text);
}

QString dash() {
    return QStringLiteral("–");
}

/// A time that may be blank.
template <class Row, class At>
Column<Row> time_column(const QString& title, At at, const Zone& zone, const QLocale& locale,
                        const QString& blank) {
    return Column<Row>(title, {},
                       [=](const Row& row) {
                           const std::optional<Instant> time = at(row);
                           return time ? moment_shown(*time, zone, locale) : blank;
                       })
        .copied_as([=](const Row& row) {
            const std::optional<Instant> time = at(row);
            return time ? QString::fromStdString(instant_text(*time, zone)) : QString();
        });
}

Column<ThresholdVersion> limit_column(const QString& title, const QString& unit,
                                      std::optional<double> Thresholds::*member, const QString& tip,
                                      const QLocale& locale) {
    using Row = ThresholdVersion;
    return Column<Row>(title, unit,
                       [=](const Row& row) {
                           const auto& value = row.span.thresholds.*member;
                           return value ? number_shown(*value, *value == std::round(*value) ? 0 : 2, locale)
                                        : dash();
                       })
        .number([member](const Row& row) { return row.span.thresholds.*member; })
        .tip(tip);
}

bool holds(const Instrument& row, Instant as_at) {
    return row.calibrated_until && as_at < *row.calibrated_until;
}

}  // namespace

InstrumentWord instrument_word(const InstrumentStand& stand, Instant as_at) {
    const Instrument& row = stand.row;
    if (!row.deployed) {
        if (!row.calibrated_until) return {State::unknown, tr("not deployed")};
        return holds(row, as_at) ? InstrumentWord{State::clear, tr("calibration, holds")}
                                 : InstrumentWord{State::attention, tr("calibration, has ended")};
    }
    if (stand.standing) {
        if (stand.calibration == CalibrationState::valid) return {State::clear, tr("stands, calibrated")};
        if (stand.calibration == CalibrationState::expired)
            return {State::hold, tr("stands, calibration expired")};
        return {State::unknown, tr("stands, calibration not recorded")};
    }
    if (!row.recovered) return {State::attention, tr("another stands there, not recovered")};
    if (stand.calibration == CalibrationState::valid) return {State::clear, tr("recovered")};
    if (stand.calibration == CalibrationState::expired)
        return {State::attention, tr("recovered, calibration had expired")};
    return {State::unknown, tr("recovered, calibration not recorded")};
}

std::vector<Column<InstrumentStand>> instrument_columns(const std::function<Instant()>& as_at,
                                                        const Zone& zone, const QLocale& locale) {
    using Row = InstrumentStand;
    const auto text = [](const QString& title, std::string Instrument::*member) {
        return Column<Row>(title, {}, [member](const Row& row) { return book_text(row.row.*member); });
    };
    const auto time = [&](const QString& title, std::optional<Instant> Instrument::*member,
                          const QString& blank) {
        return time_column<Row>(
            title, [member](const Row& row) { return row.row.*member; }, zone, locale, blank);
    };
    return {
        Column<Row>(tr("Site"), {}, [](const Row& row) { return QString::fromStdString(row.site); }),
        text(tr("Serial number"), &Instrument::serial),
        Column<Row>(tr("State"), {}, [as_at](const Row& row) { return instrument_word(row, as_at()).word; })
            .mark([as_at](const Row& row) { return instrument_word(row, as_at()).state; }),
        time(tr("Stands from"), &Instrument::deployed, dash()),
        time(tr("To"), &Instrument::recovered, dash()),
        time(tr("Calibrated"), &Instrument::calibrated, dash()),
        time(tr("Holds until"), &Instrument::calibrated_until, tr("not recorded")),
        text(tr("By"), &Instrument::by),
        text(tr("Remarks"), &Instrument::remarks)};
}

std::vector<Column<ThresholdVersion>> threshold_columns(const Zone& zone, const QLocale& locale) {
    using Row = ThresholdVersion;
    const auto number = [&](const QString& title, const QString& unit,
                            std::optional<double> Thresholds::*member,
                            const QString& tip) { return limit_column(title, unit, member, tip, locale); };
    const auto from = [](const Row& row) {
        return row.span.from == ThresholdSpan{}.from ? std::nullopt : std::optional(row.span.from);
    };
    const auto to = [](const Row& row) {
        return row.span.to == ThresholdSpan{}.to ? std::nullopt : std::optional(row.span.to);
    };
    return {
        Column<Row>(tr("Site"), {}, [](const Row& row) { return QString::fromStdString(row.site); }),
        Column<Row>(tr("State"), {},
                    [](const Row& row) { return row.in_force ? tr("in force") : tr("not in force"); })
            .mark([](const Row& row) { return row.in_force ? std::optional(State::clear) : std::nullopt; }),
        time_column<Row>(tr("From"), from, zone, locale, tr("always")),
        time_column<Row>(tr("To"), to, zone, locale, tr("open")),
        Column<Row>(tr("Unit"), {}, [](const Row& row) { return QString::fromStdString(row.unit); }),
        number(tr("Least"), {}, &Thresholds::range_low, tr("Gross range: below it fails")),
        number(tr("Greatest"), {}, &Thresholds::range_high, tr("Gross range: above it fails")),
        number(tr("Suspect below"), {}, &Thresholds::suspect_low,
               tr("Inside the gross range: below it is suspect")),
        number(tr("Suspect above"), {}, &Thresholds::suspect_high,
               tr("Inside the gross range: above it is suspect")),
        number(tr("Spike, suspect"), {}, &Thresholds::spike, tr("A higher spike is suspect")),
        number(tr("Spike, fail"), {}, &Thresholds::spike_fail, tr("A higher spike fails")),
        number(tr("Change"), tr("a min"), &Thresholds::rate_per_min, tr("A faster change is suspect")),
        number(tr("Flat, suspect"), QStringLiteral("min"), &Thresholds::flat_min,
               tr("Unchanged for longer is suspect")),
        number(tr("Flat, fail"), QStringLiteral("min"), &Thresholds::flat_fail_min,
               tr("Unchanged for longer fails")),
        number(tr("Flat within"), {}, &Thresholds::flat_tolerance, tr("Nearer readings are unchanged"))};
}

}  // namespace spoilbook::form
