// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/condition_rows.h"

#include <QCoreApplication>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <set>

#include "forms/works/say.h"
#include "model/consent/sentence.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Conditions", text);
}

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

ConditionRow row_of(const Condition& condition, const Zone& zone) {
    ConditionRow row;
    row.condition = &condition;
    row.number = shown(condition.condition);
    row.kind = shown(condition.kind);
    row.sentence = book_text(condition_sentence(condition));
    row.wording = book_text(condition.wording);
    QStringList notes;
    for (const std::string& note : condition_notes(condition, zone))
        notes << shown(note);
    row.notes = notes.join(u' ');
    const QJsonObject body = QJsonDocument::fromJson(QByteArray::fromStdString(condition.body)).object();
    if (!body.contains(QStringLiteral("settled")))
        row.open_question = body.value(QStringLiteral("open_question")).toString();
    row.word = tr("being judged …");
    return row;
}

using Number = std::optional<double> (*)(const LimitRow&);

Column<ConditionRow> figure(const QString& title, Number number,
                            QString (*round)(double, int, const QLocale&), const QLocale& locale) {
    const auto value = [number](const ConditionRow& r) { return r.limit ? number(*r.limit) : std::nullopt; };
    return Column<ConditionRow>(title, {},
                                [=](const ConditionRow& r) {
                                    const auto v = value(r);
                                    return v ? round(*v, r.limit->decimals, locale) : QString();
                                })
        .number(value);
}

}  // namespace

std::vector<ConditionRow> condition_rows(const Figures& figures, const QLocale& locale) {
    const auto limits = limit_rows(figures.limits, figures.season.zone, locale);
    std::vector<ConditionRow> rows;
    for (const Condition& condition : figures.season.conditions.rows()) {
        if (!in_force(condition, figures.as_at)) continue;
        ConditionRow row = row_of(condition, figures.season.zone);
        bool is_limit = false;
        for (const LimitRow& limit : limits) {
            if (figures.limits[limit.place].condition->id != condition.id) continue;
            is_limit = true;
            rows.push_back(row);
            rows.back().number = limit.name;
            rows.back().state = limit.state;
            rows.back().word = limit.word;
            rows.back().limit = limit;
        }
        if (!is_limit) rows.push_back(std::move(row));
    }
    return rows;
}

void put_standings(std::vector<ConditionRow>& rows, const std::map<Id, ConditionStanding>& standings) {
    for (ConditionRow& row : rows) {
        const auto found = standings.find(row.condition->id);
        if (row.limit || found == standings.end()) continue;
        row.standing = found->second;
        row.state = found->second.state;
        row.word = found->second.word;
    }
}

void put_bites(std::vector<ConditionRow>& rows, const Forecast& forecast, const QLocale& locale) {
    for (ConditionRow& row : rows) {
        if (!row.limit) continue;
        for (const LimitForecast& limit : forecast.limits) {
            if (limit_name(limit.state) != row.limit->name || !limit.p_before_target) continue;
            row.bites = limit.dates.p50;
            row.bites_text = row.bites ? day_shown(*row.bites, locale) : tr("not within two years");
        }
    }
}

std::vector<Column<ConditionRow>> condition_columns(const QLocale& locale) {
    using Row = ConditionRow;
    const auto p_text = [locale](const Row& r) {
        return r.limit && r.limit->p_over ? probability_shown(*r.limit->p_over, locale) : QString();
    };
    return {
        Column<Row>(tr("Condition"), {}, [](const Row& r) { return r.number; }),
        Column<Row>(tr("State"), {}, [](const Row& r) { return r.word; }).mark([](const Row& r) {
            return std::optional(r.state);
        }),
        figure(
            tr("Used"), [](const LimitRow& r) { return std::optional(r.used); }, &rounded_up, locale)
            .tip(tr("In the condition's own unit, rounded up")),
        figure(
            tr("± u"), [](const LimitRow& r) { return std::optional(r.used_u); }, &rounded_up, locale),
        figure(
            tr("Limit"), [](const LimitRow& r) { return r.limit; }, &rounded_down, locale),
        figure(
            tr("Headroom"), [](const LimitRow& r) { return r.headroom; }, &rounded_down, locale)
            .tip(tr("Limit less used, rounded down")),
        Column<Row>(tr("Unit"), {}, [](const Row& r) { return r.limit ? r.limit->unit : QString(); }),
        Column<Row>(tr("P(over)"), {}, p_text)
            .number([](const Row& r) { return r.limit ? r.limit->p_over : std::nullopt; })
            .tip(tr("Probability that it is exceeded already, by the uncertainty of what was used")),
        Column<Row>(tr("Bites"), {}, [](const Row& r) { return r.bites_text; })
            .copied_as([](const Row& r) { return r.bites ? shown(day_text(*r.bites)) : QString(); })
            .tip(tr("The day by which half of the forecast's draws have met it")),
        Column<Row>(tr("Open"), {},
                    [](const Row& r) { return r.open_question.isEmpty() ? QString() : tr("question"); }),
        Column<Row>(tr("Kind"), {}, [](const Row& r) { return r.kind; }),
        Column<Row>(tr("It reads"), {}, [](const Row& r) { return r.sentence; }),
    };
}

QString conditions_sentence(const std::vector<ConditionRow>& rows) {
    if (rows.empty()) return tr("This book has no condition in force yet.");
    std::vector<std::pair<QString, int>> counts;
    std::set<const Condition*> told;
    for (const State state : {State::hold, State::attention, State::unknown, State::clear}) {
        for (const ConditionRow& row : rows) {
            if (row.state != state || !told.insert(row.condition).second) continue;
            const auto same = std::find_if(counts.begin(), counts.end(),
                                           [&](const auto& c) { return c.first == row.word; });
            if (same == counts.end())
                counts.emplace_back(row.word, 1);
            else
                ++same->second;
        }
    }
    QStringList parts;
    for (const auto& [word, n] : counts)
        parts << tr("%1 %2").arg(n).arg(word);  // "warned at 80 % 3" would be one number
    return tr("Conditions: %1.").arg(parts.join(QStringLiteral(" · ")));
}

}  // namespace spoilbook::form
