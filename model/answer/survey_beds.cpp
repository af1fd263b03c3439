// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/survey_beds.h"

#include <algorithm>

#include "model/book/material_bytes.h"

namespace spoilbook {

namespace {

/// One that is judged, its baseline, and the same two of the place that is judged next.
constexpr std::size_t stay_open = 4;

}  // namespace

SurveyBeds::Opened SurveyBeds::of(const Survey& survey, const Crs& crs) {
    const auto held = std::find_if(last_.begin(), last_.end(),
                                   [&](const auto& opened) { return opened.first == survey.id; });
    if (held != last_.end()) {
        last_.splice(last_.begin(), last_, held);
        return last_.front().second;
    }
    if (last_.size() == stay_open) last_.pop_back();
    last_.emplace_front(survey.id, std::make_shared<const Checked<SurveyBed>>(open(survey, crs)));
    return last_.front().second;
}

Checked<SurveyBed> SurveyBeds::open(const Survey& survey, const Crs& crs) const {
    const auto bytes = survey.digest.empty() ? nullptr : material_bytes(book_, survey.digest);
    if (bytes == nullptr)
        return Refusal{"grid", "survey " + survey.survey, "the book has no grid of it",
                       "add the survey with its file"};
    return SurveyBed::open(survey, *bytes, crs);
}

}  // namespace spoilbook
