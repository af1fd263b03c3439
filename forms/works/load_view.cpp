// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/load_view.h"

#include <QCoreApplication>
#include <algorithm>
#include <map>

#include "forms/works/say.h"
#include "model/consent/quantity.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("LoadView", text);
}

QString shown(std::string_view text) {
    return QString::fromUtf8(text.data(), qsizetype(text.size()));
}

QString title_of(Method method) {
    QString name = method_shown(method);
    name[0] = name[0].toUpper();
    return name;
}

QString measure_shown(Measure measure) {
    switch (measure) {
        case Measure::hopper_m3:
            return tr("hopper m³");
        case Measure::in_situ_m3:
            return tr("in-situ m³");
        case Measure::wet_t:
            return tr("t wet");
        case Measure::dry_t:
            break;
    }
    return tr("t dry");
}

// The conditions that name a method, by the method.
std::map<Method, QStringList> named_by(const Season& season) {
    std::map<Method, QStringList> names;
    for (const Condition& condition : season.conditions.rows()) {
        if (condition.kind != "quantity") continue;
        const auto quantity = quantity_from(condition, season.zone);
        if (!quantity || quantity->method.empty()) continue;
        if (const auto method = method_named(quantity->method)) names[*method] << shown(condition.condition);
    }
    return names;
}

QString why_counted(const Season& season, const LoadFigures& figures) {
    QStringList sentences;
    for (const auto& [method, conditions] : named_by(season)) {
        const bool gives = figures.counted_by(method) != nullptr;
        sentences << (gives ? tr("By %1 for condition %2, which names it.")
                            : tr("Not known for condition %2, which names %1."))
                         .arg(method_shown(method), conditions.join(QStringLiteral(", ")));
    }
    const MethodResult* first = figures.counted_by();
    if (first) {
        sentences << tr("Where no condition names a method, %1 counts: the first of ullage, draughts, tally, "
                        "stated that gives an amount.")
                         .arg(method_shown(first->method));
    } else {
        sentences << tr("No method can value this load: it is not known, and not nil.");
    }
    return sentences.join(u' ');
}

std::vector<PartRow> parts_of(const Season& season, const LoadFigures& figures) {
    std::vector<PartRow> rows;
    const MethodResult* counted = figures.counted_by();
    for (std::size_t i = 0; i < figures.parts.size(); ++i) {
        const LoadPart& part = figures.parts[i];
        const Claim* claim = season.claims.find(part.claim);
        const Material* material = season.materials.find(part.material);
        rows.push_back({claim ? shown(claim->claim) : tr("none named"),
                        material ? shown(material->material) : tr("none named"), part.hopper_share,
                        part.in_situ_share, counted ? counted->part(i).in_situ_m3 : std::nullopt});
    }
    return rows;
}

const FactorVersion* member(const FactorSet& set, std::size_t which) {
    const FactorVersion* const all[] = {set.bulking, set.fill, set.situ_density, set.grain_density};
    return all[which];
}

constexpr std::array<std::string_view, 4> factor_names{"bulking", "fill", "situ_density", "grain_density"};

QString factor_unit(std::size_t which) {
    return which >= 2 ? QStringLiteral("t/m³") : QString();
}

/// Who revised what, by the number that stands for the version.
class FactorOrigins {
 public:
    FactorOrigins(const Season& season, const LoadIndex& index, const Sources& sources) : sources_(sources) {
        for (const Material& material : season.materials.rows())
            add(index.factors().factors_for(material.id, {}, std::nullopt), nullptr);
        for (const Factor& row : season.factors.rows())
            add(index.factors().factors_for(row.material, row.bucket, row.from), &row);
    }
    [[nodiscard]] std::optional<FactorRow> of(SourceId source) const {
        const auto found = rows_.find(source);
        return found == rows_.end() ? std::nullopt : std::optional(found->second);
    }

 private:
    void add(const FactorSet& set, const Factor* row) {
        for (std::size_t which = 0; which < factor_names.size(); ++which) {
            const FactorVersion* version = member(set, which);
            if (!version || (row && row->factor != factor_names.at(which))) continue;
            FactorRow one{shown(sources_.name(version->source)),
                          factor_unit(which),
                          version->value,
                          version->u,
                          version->from,
                          version->accepted,
                          {},
                          {}};
            if (row) one.by = shown(row->by);
            if (row) one.why = shown(row->why);
            rows_[version->source] = one;
        }
    }

    const Sources& sources_;
    std::map<SourceId, FactorRow> rows_;
};

std::vector<FactorRow> factors_of(const LoadFigures& figures, const FactorOrigins& origins) {
    std::vector<SourceId> used;
    for (const MethodResult& method : figures.methods) {
        for (const SourceId source : method.versions) {
            if (std::find(used.begin(), used.end(), source) == used.end()) used.push_back(source);
        }
    }
    std::vector<FactorRow> rows;
    for (const SourceId source : used) {
        if (auto row = origins.of(source)) rows.push_back(std::move(*row));
    }
    return rows;
}

std::vector<SaidRow> said_of(const LoadFigures& figures) {
    std::vector<SaidRow> rows;
    for (const MethodResult& method : figures.methods) {
        for (const std::string_view sentence : method.assumed)
            rows.push_back({title_of(method.method), tr("taken"), shown(sentence)});
    }
    for (const LeftOut& out : figures.left_out)
        rows.push_back({title_of(out.method), tr("left out"), shown(out.why)});
    return rows;
}

}  // namespace

LoadView load_view(const Season& season, const Load& load) {
    Sources sources;
    const LoadIndex index(season, sources);
    const LoadFigures all = figures(index, load);
    LoadView view;
    view.answer = load_answer(index, load);
    view.why = why_counted(season, all);
    for (const MethodResult& method : all.methods) {
        MethodRow row{title_of(method.method), false, State::unknown, {}, method};
        for (const MethodSaid& said : view.answer.methods) {
            if (said.name != row.name) continue;
            row.state = said.state;
            row.word = said.word;
            row.counts = said.counts;
        }
        view.methods.push_back(std::move(row));
    }
    for (const Agreement& pair : all.agreements) {
        view.pairs.push_back(
            {title_of(pair.a), title_of(pair.b), measure_shown(pair.measure), pair.e_n, pair.disagree()});
    }
    view.parts = parts_of(season, all);
    view.factors = factors_of(all, FactorOrigins(season, index, sources));
    view.said = said_of(all);
    return view;
}

}  // namespace spoilbook::form
