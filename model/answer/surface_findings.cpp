// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/surface_findings.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/bed/surface_look.h"
#include "model/consent/limit.h"
#include "model/place/ground_map.h"
#include "model/record/survey_day.h"

namespace spoilbook {

namespace {

/// A place that a condition is about.
struct Place {
    std::string named;  ///< "claim FB2"
    Area area;          ///< empty: the book has no outline of it, or nothing of it is open
    const Claim* claim = nullptr;
    Id ground, cell;  ///< nil: it is none
};

class Places {
 public:
    explicit Places(const Season& season) : season_(season), map_(season) {}

    [[nodiscard]] const std::optional<Crs>& crs() const { return map_.crs(); }

    [[nodiscard]] std::vector<Place> of(const SurfaceRule& rule, const nlohmann::json& body) const {
        std::vector<Place> places;
        for (const Claim& claim : season_.claims.rows()) {
            if (among(claim.claim, rule.claims)) places.push_back(place_of(claim));
        }
        for (const Ground& ground : season_.grounds.rows()) {
            if (rule.cells.empty() && among(ground.ground, rule.grounds)) places.push_back(place_of(ground));
        }
        for (const Cell& cell : season_.cells.rows()) {
            if (cell.kind != "exclusion" && among(cell.cell, rule.cells) && is_in(cell, rule.grounds))
                places.push_back(place_of(cell));
        }
        const bool is_named = !rule.claims.empty() || !rule.grounds.empty() || !rule.cells.empty();
        return is_named ? places : everywhere(rule, body);
    }

 private:
    static bool among(const std::string& name, const std::vector<std::string>& names) {
        return std::find(names.begin(), names.end(), name) != names.end();
    }

    [[nodiscard]] bool is_in(const Cell& cell, const std::vector<std::string>& grounds) const {
        const auto* ground = season_.grounds.find(cell.ground);
        return grounds.empty() || (ground != nullptr && among(ground->ground, grounds));
    }

    [[nodiscard]] std::vector<Place> everywhere(const SurfaceRule& rule, const nlohmann::json& body) const {
        std::vector<Place> places;
        if (judges_dredging(body)) {
            for (const Claim& claim : season_.claims.rows())
                places.push_back(place_of(claim));
        }
        if (judges_releases(body) && !rule.is_by_target()) {
            for (const Ground& ground : season_.grounds.rows())
                places.push_back(place_of(ground));
        }
        return places;
    }

    [[nodiscard]] Place place_of(const Claim& claim) const {
        const auto area = area_from_text(claim.geometry, claim.crs, *map_.crs());
        return {"claim " + claim.claim, area ? *area : Area{}, &claim, {}, {}};
    }
    [[nodiscard]] Place place_of(const Ground& ground) const {
        const Area* open = map_.open_ground(ground.id);
        return {"ground " + ground.ground, open == nullptr ? Area{} : *open, nullptr, ground.id, {}};
    }
    [[nodiscard]] Place place_of(const Cell& cell) const {
        const auto* ground = season_.grounds.find(cell.ground);
        const std::string of = ground == nullptr ? "" : " of " + ground->ground;
        return {"cell " + cell.cell + of, map_.open_cell(cell.id), nullptr, cell.ground, cell.id};
    }

    const Season& season_;
    GroundMap map_;
};

/// Surveys whose day is recorded, in order of time.
struct Surveyed {
    const Survey* survey = nullptr;
    Instant at;  ///< the last instant of its day
};

std::vector<Surveyed> in_time(const Season& season) {
    std::vector<Surveyed> all;
    for (const auto& survey : season.surveys.rows()) {
        if (const auto end = end_of_survey(&survey, season.zone)) all.push_back({&survey, *end - 1});
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Surveyed& a, const Surveyed& b) { return a.at < b.at; });
    return all;
}

class Judging {
 public:
    Judging(const Season& season, const Condition& condition, SurfaceRule rule, const Crs& crs,
            SurveyBeds& beds)
        : season_(season),
          condition_(condition),
          rule_(std::move(rule)),
          crs_(crs),
          beds_(beds),
          surveys_(in_time(season)) {}

    std::vector<Finding> run(const std::vector<Place>& places, const JudgedSpan& span) {
        std::vector<Finding> found;
        if (span.period && in_force(condition_, span.period->from)) add_standing(places, *span.period, found);
        for (const auto& one : surveys_) {
            if (!span.has(one.at) || !in_force(condition_, one.at)) continue;
            for (const auto& place : places) {
                if (auto finding = judge(one, place)) found.push_back(std::move(*finding));
            }
        }
        add_undated(places, span, found);
        return found;
    }

    /// As it stood by then: breached where the last survey that could tell says so, else what the newest that
    /// shows the place says; nothing where none does. That a newer one cannot tell lifts no hold.
    std::optional<Finding> newest(const Place& place, Instant by) {
        std::optional<Finding> last;
        std::optional<Instant> told;
        for (auto one = surveys_.rbegin(); one != surveys_.rend() && (!told || one->at == *told); ++one) {
            if (one->at > by) continue;
            auto finding = judge(*one, place);
            if (!finding) continue;
            if (finding->state != Compliance::cannot_tell) told = one->at;
            // Of two surveys of one day nobody knows which came first.
            if (finding->state == Compliance::breached || !last) last = std::move(finding);
        }
        return last;
    }

 private:
    [[nodiscard]] Finding finding_of(const Survey& survey, Instant at, const Place& place) const {
        Finding finding;
        finding.condition = &condition_;
        finding.consent = season_.consents.find(condition_.consent);
        finding.survey = &survey;
        finding.place = place.named;
        finding.at = at;
        return finding;
    }

    /// A bed that was past it as the period began, and was shown so before.
    void add_standing(const std::vector<Place>& places, const Period& period, std::vector<Finding>& found) {
        for (const auto& place : places) {
            auto finding = newest(place, period.from - 1);
            if (!finding || finding->state != Compliance::breached) continue;
            finding->why =
                "since before, and no survey showed otherwise as the period began: " + finding->why;
            found.push_back(std::move(*finding));
        }
    }

    /// The survey that the condition names judges; of which day it is nobody knows.
    void add_undated(const std::vector<Place>& places, const JudgedSpan& span,
                     std::vector<Finding>& found) const {
        if (rule_.survey.empty()) return;
        const Instant at = span.period ? std::min(span.as_at, span.period->to - 1) : span.as_at;
        for (const auto& survey : season_.surveys.rows()) {
            if (survey.survey != rule_.survey || end_of_survey(&survey, season_.zone)) continue;
            for (const auto& place : places) {
                found.push_back(finding_of(survey, at, place));
                found.back().why = "the day of survey " + survey.survey + " is not recorded";
            }
        }
    }

    /// Nothing where the survey tells nothing of the place and nobody said that it would.
    std::optional<Finding> judge(const Surveyed& one, const Place& place) {
        if (!judges(rule_, *one.survey) || is_by_baseline(one)) return std::nullopt;
        const bool is_named = !rule_.survey.empty();
        auto finding = finding_of(*one.survey, one.at, place);
        const auto untold = [&](std::string why) {
            finding.why = std::move(why);
            return finding;
        };
        if (place.area.parts.empty()) return untold("no outline of it is in the book, or none of it is open");
        const auto bounds = bounds_of(rule_, place.claim, *one.survey);
        if (bounds.empty() && rule_.is_by_target()) return untold("no target level is recorded");
        if (bounds.empty() || (one.survey->digest.empty() && !is_named)) return std::nullopt;
        const auto bed = beds_.of(*one.survey, crs_);
        if (!*bed) return untold(one_line(bed->refusals().front()));
        SurveyBeds::Opened baseline;
        if (bounds.most_rise_m) {
            if (!is_named && !shows(**bed, place.area)) return std::nullopt;
            auto found = baseline_of(one, place);
            if (!found) return untold(one_line(found.refusals().front()));
            baseline = *found;
        }
        const auto seen = look(**bed, baseline ? &**baseline : nullptr, place.area, bounds);
        if (!seen) return untold(one_line(seen.refusals().front()));
        auto told_so = told(*seen, std::move(finding));
        // The margin of a neighbour's survey is no survey of this place, unless something there is past it.
        const bool shows_it = seen->surveyed_m2 >= seen->area_m2 / 2 || told_so.state == Compliance::breached;
        return is_named || shows_it ? std::optional(std::move(told_so)) : std::nullopt;
    }

    [[nodiscard]] Finding told(const SurfaceLook& seen, Finding finding) const {
        const auto by_rule = judged(rule_, seen);
        finding.state = by_rule.state;
        finding.why = by_rule.why;
        finding.value = seen.past_share();
        finding.level = rule_.tolerance_share;
        finding.bed = seen;
        return finding;
    }

    /// Whether it is not later than the baseline that the condition names.
    [[nodiscard]] bool is_by_baseline(const Surveyed& one) const {
        if (!rule_.no_rise_m || rule_.baseline_survey.empty()) return false;
        return std::any_of(surveys_.begin(), surveys_.end(), [&](const Surveyed& other) {
            return other.survey->survey == rule_.baseline_survey && other.at >= one.at;
        });
    }

    /// The one that the condition names, else the first of kind before that shows the place and is earlier.
    [[nodiscard]] Checked<SurveyBeds::Opened> baseline_of(const Surveyed& one, const Place& place) {
        const std::string& name = rule_.baseline_survey;
        if (!name.empty()) {
            for (const auto& survey : season_.surveys.rows()) {
                if (survey.survey != name) continue;
                auto bed = beds_.of(survey, crs_);
                if (!*bed) return bed->refusals();
                return bed;
            }
            return Refusal{"grid", "the baseline", "the book has no survey " + name, "add it with its file"};
        }
        for (const auto& other : surveys_) {
            if (other.survey->kind != "before" || other.at >= one.at) continue;
            auto bed = beds_.of(*other.survey, crs_);
            if (*bed && shows(**bed, place.area)) return bed;
        }
        return Refusal{"grid", "the baseline", "no earlier survey of kind before shows the place",
                       "add one with its file, or name the baseline"};
    }

    const Season& season_;
    const Condition& condition_;
    const SurfaceRule rule_;
    const Crs& crs_;
    SurveyBeds& beds_;
    const std::vector<Surveyed> surveys_;
};

/// What both questions need of a condition; nothing where it does not read or the book has no map.
struct Asked {
    Places places;
    std::vector<Place> all;
    SurfaceRule rule;
};

std::optional<Asked> asked_of(const Season& season, const Condition& condition) {
    const auto body = body_of(condition);
    const auto rule = surface_rule_from(body);
    if (!rule) return std::nullopt;
    Places places(season);
    if (!places.crs()) return std::nullopt;
    auto all = places.of(*rule, body);
    return Asked{std::move(places), std::move(all), *rule};
}

}  // namespace

std::vector<Finding> surface_findings(const Season& season, const Condition& condition,
                                      const JudgedSpan& span, SurveyBeds& beds) {
    const auto asked = asked_of(season, condition);
    if (!asked) return {};
    return Judging(season, condition, asked->rule, *asked->places.crs(), beds).run(asked->all, span);
}

std::string survey_not_there(const Season& season, const SurfaceRule& rule) {
    const auto& surveys = season.surveys.rows();
    for (const auto* name : {&rule.survey, &rule.baseline_survey}) {
        const bool is_there =
            name->empty() || std::any_of(surveys.begin(), surveys.end(),
                                         [&](const Survey& one) { return one.survey == *name; });
        if (!is_there) return "the book has no survey " + *name + " yet";
    }
    return "";
}

std::vector<BedState> newest_beds(const Season& season, const Condition& condition, Instant by,
                                  SurveyBeds& beds) {
    const auto asked = asked_of(season, condition);
    if (!asked) return {};
    Judging judging(season, condition, asked->rule, *asked->places.crs(), beds);
    std::vector<BedState> states;
    for (const auto& place : asked->all) {
        if (!place.ground) continue;
        const auto found = judging.newest(place, by);
        if (found)
            states.push_back(
                {condition.id, place.ground, place.cell, found->state, found->named(), found->why});
    }
    return states;
}

}  // namespace spoilbook
