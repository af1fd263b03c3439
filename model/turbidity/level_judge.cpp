// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/level_judge.h"

#include <algorithm>
#include <cmath>

#include "model/turbidity/pairs.h"
#include "model/turbidity/sample_quantile.h"

namespace spoilbook {

/// A comparison with what it needs beside the rule, made once.
struct LevelJudge::Part {
    const Compare* compare = nullptr;
    std::optional<double> baseline;
    SiteSeries pairs;
    std::optional<StatisticCursor> of_pairs;
    std::vector<std::unique_ptr<Part>> parts;
};

namespace {

std::optional<double> baseline_level(const Baseline& baseline, const SiteSeries* site, int type) {
    std::optional<double> base = baseline.value;
    if (!base && site != nullptr) {
        std::vector<double> numbers;
        for (std::size_t i = 0; i < site->readings.size(); ++i) {
            const auto& reading = site->readings[i];
            const bool inside = (!baseline.from || *baseline.from <= reading.time) &&
                                (!baseline.to || reading.time < *baseline.to);
            if (inside && counts(site->flags[i])) numbers.push_back(*reading.value);
        }
        if (!numbers.empty())
            base = sample_quantile(std::move(numbers), baseline.percentile.value_or(50) / 100, type);
    }
    if (!base) return std::nullopt;
    return *base * baseline.times + baseline.plus;
}

std::optional<double> level_of(const Band& band, double control) {
    if (band.absolute) return band.absolute;
    if (band.above_control) return control + *band.above_control;
    return control * band.times_control.value_or(1);
}

Telling told(double compared, double level) {
    const bool over = compared - level > 1e-9 * std::max(1.0, std::fabs(level));
    return over ? Telling::over : Telling::not_over;
}

const Band* band_holding(const std::vector<Band>& bands, double control) {
    const auto found = std::find_if(bands.begin(), bands.end(), [&](const Band& band) {
        return (!band.control_from || *band.control_from <= control) &&
               (!band.control_to || control < *band.control_to);
    });
    return found == bands.end() ? nullptr : &*found;
}

}  // namespace

LevelJudge::LevelJudge(const SeriesRule& rule, const SiteSeries& site, const SeriesOf& series_of)
    : rule_(rule), own_(site, rule.statistic, rule.over_min) {
    const SiteSeries* control = rule.control.empty() ? nullptr : series_of(rule.control);
    if (control != nullptr) control_.emplace(*control, rule.statistic, rule.over_min, true);
    compare_ = part_of(rule.compare, site, series_of);
}

std::unique_ptr<LevelJudge::Part> LevelJudge::part_of(const Compare& compare, const SiteSeries& site,
                                                      const SeriesOf& series_of) {
    auto part = std::make_unique<Part>();
    part->compare = &compare;
    for (const auto& one : compare.parts)
        part->parts.push_back(part_of(one, site, series_of));
    if (compare.form == CompareForm::baseline) {
        const auto& named = compare.baseline.site;
        part->baseline =
            baseline_level(compare.baseline, named.empty() ? &site : series_of(named), rule_.statistic.type);
    }
    if (compare.form == CompareForm::paired_above_control) {
        const SiteSeries* control = rule_.control.empty() ? nullptr : series_of(rule_.control);
        if (control != nullptr)
            part->pairs = paired_differences(site, *control, compare.lag_min, compare.tolerance_min);
        part->of_pairs.emplace(part->pairs, rule_.statistic, rule_.over_min);
    }
    return part;
}

Judged LevelJudge::at(Instant t) {
    Judged judged;
    judged.statistic = own_.at(t);
    if (control_) judged.control = control_->at(t);
    const auto found = outcome(*compare_, judged, t);
    judged.telling = found.telling;
    judged.compared = found.compared;
    const bool is_paired = rule_.compare.form == CompareForm::paired_above_control;
    if (!judged.compared && !is_paired && complete_enough(judged.statistic, rule_.min_complete))
        judged.compared = judged.statistic.value;
    judged.level = found.level;
    return judged;
}

LevelJudge::Outcome LevelJudge::against(const Judged& judged, std::optional<double> level) const {
    if (!level || !complete_enough(judged.statistic, rule_.min_complete)) return {};
    const double compared = *judged.statistic.value;
    return {told(compared, *level), compared, level};
}

LevelJudge::Outcome LevelJudge::outcome(Part& part, const Judged& judged, Instant t) {
    const Compare& compare = *part.compare;
    if (compare.form == CompareForm::absolute) return against(judged, compare.x);
    if (compare.form == CompareForm::baseline) return against(judged, part.baseline);
    if (compare.form == CompareForm::higher_of) return highest(part, judged, t);
    if (compare.form == CompareForm::paired_above_control) {
        const auto pairs = part.of_pairs->at(t);
        if (!complete_enough(pairs, rule_.min_complete)) return {};
        return {told(*pairs.value, compare.x), pairs.value, compare.x};
    }
    if (!judged.control || !complete_enough(*judged.control, rule_.min_complete)) return {};
    const double control = *judged.control->value;
    if (compare.form == CompareForm::above_control) return against(judged, control + compare.x);
    if (compare.form == CompareForm::times_control) return against(judged, control * compare.x);
    if (const Band* band = band_holding(compare.bands, control))
        return against(judged, level_of(*band, control));
    if (!complete_enough(judged.statistic, rule_.min_complete)) return {};
    return {Telling::not_over, judged.statistic.value, std::nullopt};
}

LevelJudge::Outcome LevelJudge::highest(Part& part, const Judged& judged, Instant t) {
    Outcome highest{Telling::over, std::nullopt, std::nullopt};
    bool told = true;
    // Every part is asked, also after one that cannot tell: their windows move along together.
    for (const auto& one : part.parts) {
        const auto found = outcome(*one, judged, t);
        told = told && found.telling != Telling::cannot_tell;
        if (found.telling == Telling::not_over) highest.telling = Telling::not_over;
        if (!highest.level || (found.level && *found.level > *highest.level)) {
            highest.level = found.level;
            highest.compared = found.compared;
        }
    }
    return told ? highest : Outcome{};
}

}  // namespace spoilbook
