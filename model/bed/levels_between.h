// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/bed/survey_bed.h"

namespace spoilbook {

/// Levels of a bed at places that another grid names: in the middle of a pixel that pixel's, elsewhere
/// between the four around it, bilinear. Reads no more than the pixels that are asked for.
class LevelsBetween {
 public:
    /// The bed must outlive it.
    explicit LevelsBetween(const SurveyBed& bed) : bed_(bed) {}

    /// At the middles of the pixels of a window of `other`, row by row: NaN where one of those that count
    /// was not surveyed. REQUIRES both grids on one map.
    [[nodiscard]] std::vector<double> at_middles_of(const BedGrid& other, const GridWindow& window) const;

 private:
    const SurveyBed& bed_;
};

}  // namespace spoilbook
