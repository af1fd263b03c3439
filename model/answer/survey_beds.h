// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <list>
#include <memory>

#include "model/bed/survey_bed.h"
#include "model/book/book.h"

namespace spoilbook {

/// The grids of a book's surveys, opened when they are first asked for; the last few stay open. The book
/// must outlive it; one thread at a time.
class SurveyBeds {
 public:
    explicit SurveyBeds(const Book& book) : book_(book) {}

    using Opened = std::shared_ptr<const Checked<SurveyBed>>;
    /// Refused where "survey SV-1" has no grid in the book, or one that does not read (SurveyBed::open).
    Opened of(const Survey& survey, const Crs& crs);

 private:
    [[nodiscard]] Checked<SurveyBed> open(const Survey& survey, const Crs& crs) const;

    const Book& book_;
    std::list<std::pair<Id, Opened>> last_;  ///< asked for last stands first
};

}  // namespace spoilbook
