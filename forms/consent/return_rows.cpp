// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/return_rows.h"

#include <QCoreApplication>

#include "forms/consent/release_rows.h"
#include "forms/shared/number_typed.h"
#include "forms/works/say.h"
#include "model/record/release_name.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Return", text);
}

QString read(const std::string& text) {
    return QString::fromStdString(text);
}

ScheduleRow made_row(const ScheduleLine& line, const Zone& zone, const QLocale& locale) {
    ScheduleRow row;
    row.trip = read(name_with_trip(*line.release));
    if (line.release->ended) {
        row.at_text = moment_shown(*line.release->ended, zone, locale);
        row.at_copy = read(instant_text(*line.release->ended, zone));
    }
    row.claims = read(line.claims);
    row.material = read(line.material);
    row.barge = read(line.barge);
    row.ground = read(line.ground);
    row.cell = read(line.cell);
    row.method = line.method.empty() ? tr("not known") : read(line.method);
    row.place = verdict_word(line.place.verdict);
    row.place_state = verdict_state(line.place.verdict);
    row.late = line.late ? tr("late") : QString();
    if (line.hopper_m3) row.hopper_m3 = line.hopper_m3->value();
    if (line.in_situ_m3) row.in_situ_m3 = line.in_situ_m3->value();
    return row;
}

std::string named(const Condition& condition) {
    return condition.text.empty() ? condition.condition : condition.condition + ' ' + condition.text;
}

void add_totals(std::vector<TotalRow>& rows, const QString& by, const std::vector<PrintedTotal>& totals,
                bool with_hopper) {
    for (const PrintedTotal& total : totals) {
        TotalRow row{by,
                     total.key.empty() ? tr("none named") : read(total.key),
                     double(total.releases),
                     double(total.unknown),
                     total.in_situ_m3.value(),
                     {}};
        if (with_hopper) row.hopper_m3 = total.hopper_m3.value();
        rows.push_back(std::move(row));
    }
}

void fill_figures(ReturnShown& shown, const ReturnFacts& facts, const QLocale& locale) {
    const auto u = [&locale](const std::optional<Estimate>& e) {
        return e ? rounded_up(e->u(), 1, locale) : QString();
    };
    shown.in_situ = {tr("In situ"), number_shown(facts.printed.in_situ_m3.value(), 1, locale),
                     QStringLiteral("m³"), u(facts.totals.amounts.in_situ_m3), tr("sum of what is printed")};
    shown.hopper = {tr("Hopper"), number_shown(facts.printed.hopper_m3.value(), 1, locale),
                    QStringLiteral("m³"), u(facts.totals.amounts.hopper_m3), tr("sum of what is printed")};
    shown.releases = {tr("Releases"),
                      locale.toString(qulonglong(facts.schedule.size())),
                      {},
                      {},
                      tr("of %1 loads").arg(locale.toString(qulonglong(facts.totals.loads)))};
    shown.late = {tr("Entered late"),
                  locale.toString(qulonglong(facts.late_entries)),
                  {},
                  {},
                  tr("over 24 h after the release")};
}

}  // namespace

ReturnShown return_shown(const ReturnFacts& facts, const QLocale& locale) {
    ReturnShown shown;
    shown.period = month_shown(facts.period_name, locale);
    for (const Missing& missing : facts.missing)
        shown.missing.push_back({read(missing.what), read(missing.where)});
    const Zone zone = facts.season->zone;
    for (const ScheduleLine& line : facts.schedule)
        shown.schedule.push_back(made_row(line, zone, locale));
    shown.totals.push_back({tr("All"),
                            {},
                            double(facts.printed.releases),
                            double(facts.printed.unknown),
                            facts.printed.in_situ_m3.value(),
                            facts.printed.hopper_m3.value()});
    add_totals(shown.totals, tr("Claim"), facts.by_claim, false);
    add_totals(shown.totals, tr("Material"), facts.by_material, true);
    add_totals(shown.totals, tr("Ground"), facts.by_ground, true);
    add_totals(shown.totals, tr("Cell"), facts.by_cell, true);
    for (const std::string& reason : facts.reasons)
        shown.reasons << read(reason);
    for (const NotJudged& one : facts.not_judged)
        shown.not_judged << QStringLiteral("%1 (%2)").arg(book_text(named(*one.condition)),
                                                          book_text(one.why));
    shown.water = water_rows(facts, locale);
    shown.triggers = answered_rows(facts, locale);
    shown.judged = judged_rows(facts, locale);
    fill_figures(shown, facts, locale);
    return shown;
}

namespace {

template <class Row>
Column<Row> tenths(const QString& title, std::optional<double> Row::*number, const QLocale& locale) {
    return Column<Row>(title, QStringLiteral("m³"),
                       [=](const Row& r) {
                           const auto& value = r.*number;
                           return value ? number_shown(*value, 1, locale) : QStringLiteral("–");
                       })
        .number([number](const Row& r) { return r.*number; });
}

template <class Row>
Column<Row> words(const QString& title, QString Row::*text) {
    return Column<Row>(title, {}, [text](const Row& r) { return r.*text; });
}

Column<TotalRow> whole(const QString& title, double TotalRow::*number, const QLocale& locale) {
    return Column<TotalRow>(title, {}, [=](const TotalRow& r) { return number_shown(r.*number, 0, locale); })
        .number([number](const TotalRow& r) { return std::optional(r.*number); });
}

}  // namespace

std::vector<Column<ScheduleRow>> schedule_columns(const QLocale& locale) {
    using Row = ScheduleRow;
    return {
        words<Row>(tr("Trip"), &Row::trip),
        words<Row>(tr("Release end"), &Row::at_text).copied_as([](const Row& r) { return r.at_copy; }),
        tenths<Row>(tr("In situ"), &Row::in_situ_m3, locale),
        tenths<Row>(tr("Hopper"), &Row::hopper_m3, locale),
        words<Row>(tr("Known by"), &Row::method),
        words<Row>(tr("Place"), &Row::place).mark([](const Row& r) { return std::optional(r.place_state); }),
        words<Row>(tr("Cell"), &Row::cell),
        words<Row>(tr("Claims"), &Row::claims),
        words<Row>(tr("Material"), &Row::material),
        words<Row>(tr("Barge"), &Row::barge),
        words<Row>(tr("Ground"), &Row::ground),
        words<Row>(tr("Entered"), &Row::late),
    };
}

std::vector<Column<TotalRow>> total_columns(const QLocale& locale) {
    using Row = TotalRow;
    return {words<Row>(tr("By"), &Row::by),
            words<Row>(tr("Which"), &Row::key),
            whole(tr("Releases"), &Row::releases, locale),
            tenths<Row>(tr("In situ"), &Row::in_situ_m3, locale),
            tenths<Row>(tr("Hopper"), &Row::hopper_m3, locale),
            whole(tr("Not known"), &Row::unknown, locale)};
}

std::vector<Column<MissingRow>> missing_columns() {
    return {words<MissingRow>(tr("Where"), &MissingRow::where),
            words<MissingRow>(tr("What is missing"), &MissingRow::what)};
}

}  // namespace spoilbook::form
