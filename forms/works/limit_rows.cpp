// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/limit_rows.h"

#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "forms/works/say.h"
#include "model/consent/quantity_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Limits", text);
}

State shape_of(LimitStanding standing) {
    switch (standing) {
        case LimitStanding::within:
            return State::clear;
        case LimitStanding::warned:
        case LimitStanding::was_over:
        case LimitStanding::below:
            return State::attention;
        case LimitStanding::over:
            return State::hold;
        case LimitStanding::no_limit:
        case LimitStanding::cannot_tell:
            break;
    }
    return State::unknown;
}

QString settled_words(const QJsonObject& settled) {
    if (settled.isEmpty()) return {};
    QStringList parts;
    for (const char* key : {"letter", "by", "on"}) {
        const QString part = settled.value(QLatin1String(key)).toString();
        if (!part.isEmpty()) parts << part;
    }
    return parts.join(QStringLiteral(", "));
}

void fill_condition(LimitRow& row, const Condition& condition) {
    row.text = book_text(condition.text);
    row.wording = book_text(condition.wording);
    const QJsonObject body = QJsonDocument::fromJson(QByteArray::fromStdString(condition.body)).object();
    row.open_question = book_text(body.value(QStringLiteral("open_question")).toString().toStdString());
    row.settled = settled_words(body.value(QStringLiteral("settled")).toObject());
}

LimitRow made_row(const LimitState& state, std::size_t place, const Zone& zone, const QLocale& locale) {
    const double scale = limit_scale(state.quantity);
    LimitRow row;
    row.place = place;
    row.name = limit_name(state);
    row.what = book_text(state.condition->text);
    row.unit = limit_unit(state.quantity);
    row.counted_unit = QString::fromStdString(counted_unit(state.quantity));
    row.window = limit_window(state, zone, locale);
    std::tie(row.state, row.word) = standing_shown(state, locale);
    row.decimals = limit_decimals(state.quantity);
    row.used = state.used * scale;
    row.used_u = state.used_u * scale;
    if (state.limit) row.limit = *state.limit * scale;
    if (state.headroom()) row.headroom = *state.headroom() * scale;
    row.used_share = state.used_share();
    row.p_over = state.p_over;
    row.first_over = state.first_over;
    if (state.first_over) {
        row.first_over_text = moment_shown(*state.first_over, zone, locale);
        row.first_over_copy = QString::fromStdString(instant_text(*state.first_over, zone));
    }
    fill_condition(row, *state.condition);
    return row;
}

using Numbered = std::optional<double> LimitRow::*;

Column<LimitRow> rounding(const QString& title, Numbered number,
                          QString (*round)(double, int, const QLocale&), const QLocale& locale) {
    return Column<LimitRow>(title, {},
                            [=](const LimitRow& r) {
                                const auto& value = r.*number;
                                return value ? round(*value, r.decimals, locale) : QStringLiteral("–");
                            })
        .number([number](const LimitRow& r) { return r.*number; });
}

}  // namespace

std::pair<State, QString> standing_shown(const LimitState& state, const QLocale& locale) {
    const LimitStanding standing = standing_of(state);
    const QString word = state_word(standing_word(standing));
    if (standing != LimitStanding::warned) return {shape_of(standing), word};
    return {shape_of(standing), tr("%1 at %2 %").arg(word, locale.toString(*warned_at(state) * 100, 'g', 4))};
}

std::vector<LimitRow> limit_rows(const std::vector<LimitState>& states, const Zone& zone,
                                 const QLocale& locale) {
    std::vector<LimitRow> rows;
    rows.reserve(states.size());
    for (std::size_t i = 0; i < states.size(); ++i)
        rows.push_back(made_row(states[i], i, zone, locale));
    return rows;
}

std::vector<Column<LimitRow>> limit_columns(const QLocale& locale) {
    using Row = LimitRow;
    const auto used_text = [locale](const Row& r) { return rounded_up(r.used, r.decimals, locale); };
    const auto u_text = [locale](const Row& r) { return rounded_up(r.used_u, r.decimals, locale); };
    const auto p_text = [locale](const Row& r) {
        return r.p_over ? probability_shown(*r.p_over, locale) : QStringLiteral("–");
    };
    return {
        Column<Row>(tr("Condition"), {}, [](const Row& r) { return r.name; }),
        Column<Row>(tr("State"), {}, [](const Row& r) { return r.word; }).mark([](const Row& r) {
            return std::optional(r.state);
        }),
        rounding(tr("Headroom"), &Row::headroom, &rounded_down, locale)
            .tip(tr("Limit less used, rounded down")),
        Column<Row>(tr("Used"), {}, used_text)
            .number([](const Row& r) { return std::optional(r.used); })
            .tip(tr("Rounded up")),
        Column<Row>(tr("± u"), {}, u_text)
            .number([](const Row& r) { return std::optional(r.used_u); })
            .tip(tr("Standard uncertainty of what is used (68 %)")),
        rounding(tr("Limit"), &Row::limit, &rounded_down, locale),
        Column<Row>(tr("Unit"), {}, [](const Row& r) { return r.unit; }),
        Column<Row>(tr("P(over)"), {}, p_text)
            .number([](const Row& r) { return r.p_over; })
            .tip(tr("How likely it is that more than the limit is used already, given the uncertainty of "
                    "what was "
                    "measured")),
        Column<Row>(tr("First over"), {}, [](const Row& r) { return r.first_over_text; })
            .copied_as([](const Row& r) { return r.first_over_copy; }),
        Column<Row>(tr("What"), {}, [](const Row& r) { return r.what; }),
        Column<Row>(tr("Window"), {}, [](const Row& r) { return r.window; }),
    };
}

}  // namespace spoilbook::form
