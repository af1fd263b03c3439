// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/load_answer.h"

#include <QCoreApplication>

#include "forms/barge/desk_words.h"
#include "model/consent/quantity.h"
#include "model/volume/load_figures.h"

namespace spoilbook::form {
namespace {

QString words(const char* text) {
    return QCoreApplication::translate("load_answer", text);
}

QString name_of(Method method) {
    const std::string_view name = method_name(method);
    return QString::fromUtf8(name.data(), qsizetype(name.size()));
}

std::optional<Method> consented(const Season& season) {
    for (const Condition& condition : season.conditions.rows()) {
        if (condition.kind != "quantity") continue;
        const auto quantity = quantity_from(condition, season.zone);
        if (quantity && !quantity->method.empty()) return method_named(quantity->method);
    }
    return std::nullopt;
}

QString amounts(const MethodResult& result) {
    QStringList parts;
    if (result.hopper_m3)
        parts << words("%1 in the hopper").arg(estimate_words(*result.hopper_m3, QStringLiteral("m³")));
    if (result.in_situ_m3)
        parts << words("%1 in situ").arg(estimate_words(*result.in_situ_m3, QStringLiteral("m³")));
    return parts.join(QStringLiteral(", "));
}

// How this method stands to the one that counts.
QString agrees(const LoadFigures& figures, Method counted, Method other, bool& disagree) {
    for (const Agreement& pair : figures.agreements) {
        const bool both = (pair.a == counted && pair.b == other) || (pair.a == other && pair.b == counted);
        if (!both) continue;
        disagree = disagree || pair.disagree();
        return pair.disagree() ? words("disagrees") : words("agrees");
    }
    return words("not comparable");
}

}  // namespace

LoadAnswer load_answer(const Season& season, const Load& load) {
    LoadAnswer answer;
    Sources sources;
    const LoadIndex index(season, sources);
    const LoadFigures all = figures(index, load);
    for (const LeftOut& out : all.left_out) {
        if (out.method == Method::ullage)
            answer.dips_trouble = QString::fromUtf8(out.why.data(), qsizetype(out.why.size()));
    }
    const auto named = consented(season);
    const MethodResult* counted = all.counted_by(named);
    const bool as_named = counted != nullptr && named.has_value();
    if (!counted) counted = all.counted_by();
    if (!counted) return answer;
    answer.counts = amounts(*counted);
    answer.by = as_named ? words("by %1, as the consent counts").arg(name_of(counted->method))
                         : words("by %1").arg(name_of(counted->method));
    bool disagree = false;
    QStringList beside;
    for (const MethodResult& other : all.methods) {
        const QString amount = amounts(other);
        if (other.method == counted->method || amount.isEmpty()) continue;
        beside << words("%1: %2, %3")
                      .arg(name_of(other.method), amount,
                           agrees(all, counted->method, other.method, disagree));
    }
    answer.beside = beside.join(u'\n');
    answer.state = disagree ? State::attention : State::clear;
    return answer;
}

}  // namespace spoilbook::form
