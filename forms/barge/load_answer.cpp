// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/load_answer.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "forms/barge/desk_words.h"
#include "forms/works/say.h"
#include "model/consent/quantity.h"

namespace spoilbook::form {
namespace {

QString words(const char* text) {
    return QCoreApplication::translate("load_answer", text);
}

QString title_of(Method method) {
    QString name = method_shown(method);
    name[0] = name[0].toUpper();
    return name;
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

QString all_amounts(const MethodResult& result) {
    QStringList parts{amounts(result)};
    if (result.wet_t) parts << words("%1 wet").arg(estimate_words(*result.wet_t, QStringLiteral("t")));
    if (result.dry_t) parts << words("%1 dry").arg(estimate_words(*result.dry_t, QStringLiteral("t")));
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

const Agreement* agreement_of(const LoadFigures& figures, Method one, Method other) {
    for (const Agreement& pair : figures.agreements) {
        if ((pair.a == one && pair.b == other) || (pair.a == other && pair.b == one)) return &pair;
    }
    return nullptr;
}

// How this method stands to the one that counts.
MethodSaid said(const LoadFigures& figures, const MethodResult& result, const MethodResult* counted) {
    MethodSaid one{title_of(result.method), all_amounts(result), State::clear, {}, false};
    if (&result == counted) {
        one.counts = true;
        one.word = words("counts");
        return one;
    }
    const Agreement* pair = counted ? agreement_of(figures, counted->method, result.method) : nullptr;
    if (!pair) {
        one.state = State::unknown;
        one.word = words("not comparable");
        return one;
    }
    one.state = pair->disagree() ? State::attention : State::clear;
    one.word = (pair->disagree() ? words("disagrees, E_n %1") : words("agrees, E_n %1"))
                   .arg(QLocale().toString(pair->e_n, 'f', 1));
    return one;
}

void add_methods(LoadAnswer& answer, const LoadFigures& figures, const MethodResult* counted) {
    for (const MethodResult& result : figures.methods)
        answer.methods.push_back(said(figures, result, counted));
    if (counted) {
        std::stable_partition(answer.methods.begin(), answer.methods.end(),
                              [](const MethodSaid& one) { return one.counts; });
    }
    for (const LeftOut& out : figures.left_out) {
        answer.methods.push_back({title_of(out.method),
                                  QString::fromUtf8(out.why.data(), qsizetype(out.why.size())),
                                  State::unknown, words("no figure"), false});
    }
}

}  // namespace

QStringList load_lacks(const Season& season, const Load& load) {
    QStringList lacks;
    if (!load.loading_end) lacks << words("no end of loading");
    Sources sources;
    const LoadFigures all = figures(LoadIndex(season, sources), load);
    const auto named = consented(season);
    if (!all.counted_by())
        lacks << words("no reading of how much is in her");
    else if (named && !all.counted_by(named))
        lacks << words("nothing to count her by %1, as the consent does").arg(method_shown(*named));
    return lacks;
}

LoadAnswer load_answer(const LoadIndex& index, const Load& load) {
    LoadAnswer answer;
    const LoadFigures all = figures(index, load);
    const auto named = consented(index.season());
    const MethodResult* counted = all.counted_by(named);
    const bool as_named = counted != nullptr && named.has_value();
    if (!counted) counted = all.counted_by();
    add_methods(answer, all, counted);
    if (!counted) return answer;
    answer.counts = amounts(*counted);
    answer.by = as_named ? words("by %1, as the consent counts").arg(method_shown(counted->method))
                         : words("by %1").arg(method_shown(counted->method));
    QStringList beside;
    const bool disagree = std::any_of(all.agreements.begin(), all.agreements.end(),
                                      [](const Agreement& pair) { return pair.disagree(); });
    for (const MethodSaid& one : answer.methods) {
        if (one.counts || one.word == words("no figure")) continue;
        beside << words("%1: %2, %3").arg(one.name, one.amounts, one.word);
    }
    answer.beside = beside.join(u'\n');
    answer.state = disagree ? State::attention : State::clear;
    answer.word = disagree           ? words("methods disagree")
                  : beside.isEmpty() ? words("no check beside it")
                                     : words("methods agree");
    return answer;
}

}  // namespace spoilbook::form
