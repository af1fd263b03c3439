// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/surface_findings.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/bed/coverage.h"
#include "model/bed/surface_look.h"
#include "model/consent/limit.h"
#include "model/consent/surface_rule.h"
#include "model/place/ground_map.h"
#include "model/record/survey_day.h"

namespace spoilbook {

namespace {

/// A place that a condition is about.
struct Place {
    std::string named;  ///< "claim FB2"
    Area area;          ///< empty: the book has no such place
    const Claim* claim = nullptr;
    Id id;  ///< of the claim, ground or cell
};

class Places {
 public:
    explicit Places(const Season& season) : season_(season), map_(season) {}

    [[nodiscard]] const std::optional<Crs>& crs() const { return map_.crs(); }

    [[nodiscard]] std::vector<Place> of(const SurfaceRule& rule, const nlohmann::json& body) const {
        std::vector<Place> places;
        add(places, season_.claims, &Claim::claim, rule.claims);
        add(places, season_.grounds, &Ground::ground, rule.grounds);
        add(places, season_.cells, &Cell::cell, rule.cells);
        if (!places.empty()) return places;
        if (judges_dredging(body)) add_all(places, season_.claims);
        if (judges_releases(body) && !rule.is_by_target()) add_all(places, season_.grounds);
        return places;
    }

 private:
    template <class R>
    void add(std::vector<Place>& places, const Shelf<R>& shelf, std::string R::*label,
             const std::vector<std::string>& names) const {
        for (const auto& name : names) {
            const auto& rows = shelf.rows();
            const auto row =
                std::find_if(rows.begin(), rows.end(), [&](const R& one) { return one.*label == name; });
            places.push_back(row == rows.end() ? Place{name, {}, nullptr, {}} : place_of(*row));
        }
    }

    template <class R>
    void add_all(std::vector<Place>& places, const Shelf<R>& shelf) const {
        for (const auto& row : shelf.rows())
            places.push_back(place_of(row));
    }

    [[nodiscard]] Place place_of(const Claim& claim) const {
        const auto area = area_from_text(claim.geometry, claim.crs, *map_.crs());
        return {"claim " + claim.claim, area ? *area : Area{}, &claim, claim.id};
    }
    [[nodiscard]] Place place_of(const Ground& ground) const {
        const Area* open = map_.open_ground(ground.id);
        return {"ground " + ground.ground, open == nullptr ? Area{} : *open, nullptr, ground.id};
    }
    [[nodiscard]] Place place_of(const Cell& cell) const {
        return {"cell " + cell.cell, map_.open_cell(cell.id), nullptr, cell.id};
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
        for (const auto& one : surveys_) {
            if (!span.has(one.at) || !in_force(condition_, one.at)) continue;
            for (const auto& place : places) {
                if (!tells_of(*one.survey, rule_, place.claim)) continue;
                auto finding = finding_of(one, place);
                if (judge(one, place, finding)) found.push_back(std::move(finding));
            }
        }
        return found;
    }

    /// By the newest survey that tells of the place; nothing where none does.
    std::optional<Finding> newest(const Place& place, Instant by) {
        for (auto one = surveys_.rbegin(); one != surveys_.rend(); ++one) {
            const bool is_asked = one->at <= by && in_force(condition_, one->at);
            if (!is_asked || !tells_of(*one->survey, rule_, place.claim)) continue;
            auto finding = finding_of(*one, place);
            if (judge(*one, place, finding)) return finding;
        }
        return std::nullopt;
    }

 private:
    [[nodiscard]] Finding finding_of(const Surveyed& one, const Place& place) const {
        Finding finding;
        finding.condition = &condition_;
        finding.consent = season_.consents.find(condition_.consent);
        finding.survey = one.survey;
        finding.place = place.named;
        finding.at = one.at;
        return finding;
    }

    /// False where the survey tells nothing of the place and nobody said that it would.
    bool judge(const Surveyed& one, const Place& place, Finding& finding) {
        const bool is_named = !rule_.survey.empty();
        if (place.area.parts.empty()) {
            finding.why = "the book has no outline of it";
            return true;
        }
        const auto bounds = bounds_of(rule_, place.claim);
        if (!bounds) {
            finding.why = "no target level is recorded";
            return true;
        }
        if (one.survey->digest.empty() && !is_named) return false;
        const auto bed = beds_.of(*one.survey, crs_);
        if (!*bed) {
            finding.why = said(*bed);
            return true;
        }
        if (!touches(**bed, place.area) && !is_named) return false;
        hold(**bed, place, *bounds, finding);
        return true;
    }

    void hold(const SurveyBed& bed, const Place& place, const SurfaceBounds& bounds, Finding& finding) {
        SurveyBeds::Opened baseline;
        if (bounds.most_rise_m) {
            baseline = baseline_of(place, finding);
            if (!baseline) return;
        }
        const auto seen = look(bed, baseline ? &**baseline : nullptr, place.area, bounds);
        if (!seen) {
            finding.why = said(seen);
            return;
        }
        const auto judged_so = judged(rule_, *seen);
        finding.state = judged_so.state;
        finding.why = judged_so.why;
        finding.value = seen->past_share();
        finding.level = rule_.tolerance_share;
        finding.bed = *seen;
    }

    /// Null, with the reason in the finding, where there is none.
    SurveyBeds::Opened baseline_of(const Place& place, Finding& finding) {
        const std::string& name = rule_.baseline_survey;
        for (const auto& survey : candidates()) {
            if (name.empty() ? survey->kind != "before" : survey->survey != name) continue;
            auto bed = beds_.of(*survey, crs_);
            if (*bed && (!name.empty() || touches(**bed, place.area))) return bed;
            if (!*bed && !name.empty()) {
                finding.why = said(*bed);
                return nullptr;
            }
        }
        finding.why = name.empty() ? "no survey of kind before shows it, to rise over"
                                   : "the book has no survey " + name + ", to rise over";
        return nullptr;
    }

    /// A baseline that is named may have no day.
    [[nodiscard]] std::vector<const Survey*> candidates() const {
        std::vector<const Survey*> all;
        for (const auto& one : surveys_)
            all.push_back(one.survey);
        for (const auto& survey : season_.surveys.rows()) {
            if (std::find(all.begin(), all.end(), &survey) == all.end()) all.push_back(&survey);
        }
        return all;
    }

    static bool touches(const SurveyBed& bed, const Area& area) {
        return Coverage(bed.map().on_grid(area), bed.grid()).window().has_value();
    }

    template <class T>
    static std::string said(const Checked<T>& refused) {
        return one_line(refused.refusals().front());
    }

    const Season& season_;
    const Condition& condition_;
    const SurfaceRule rule_;
    const Crs& crs_;
    SurveyBeds& beds_;
    const std::vector<Surveyed> surveys_;
};

}  // namespace

std::vector<Finding> surface_findings(const Season& season, const Condition& condition,
                                      const JudgedSpan& span, SurveyBeds& beds) {
    const auto body = body_of(condition);
    const auto rule = surface_rule_from(body);
    const Places places(season);
    if (!rule || !places.crs()) return {};
    return Judging(season, condition, *rule, *places.crs(), beds).run(places.of(*rule, body), span);
}

std::vector<BedState> newest_beds(const Season& season, const Condition& condition, Instant by,
                                  SurveyBeds& beds) {
    const auto body = body_of(condition);
    const auto rule = surface_rule_from(body);
    const Places places(season);
    std::vector<BedState> states;
    if (!rule || !places.crs()) return states;
    Judging judging(season, condition, *rule, *places.crs(), beds);
    for (const auto& place : places.of(*rule, body)) {
        if (place.claim != nullptr) continue;
        const auto found = judging.newest(place, by);
        if (found) states.push_back({condition.id, place.id, found->state, found->named(), found->why});
    }
    return states;
}

}  // namespace spoilbook
