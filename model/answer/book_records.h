// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/survey_beds.h"
#include "model/book/book.h"
#include "model/consent/findings.h"

namespace spoilbook {

/// Every watch on record.
std::vector<Watch> watches_of(const Book& book);

/// What conditions are judged by after the act and a season does not have: the watches on record, which
/// columns hold something, and the grids of surveys. Each is read from the book when it is first asked for.
/// The book must outlive it; one thread at a time.
class BookRecords {
 public:
    explicit BookRecords(const Book& book) : book_(book), beds_(book) {}

    const std::vector<Watch>& watches();
    const RecordColumns& columns();
    SurveyBeds& beds() { return beds_; }

 private:
    const Book& book_;
    std::optional<std::vector<Watch>> watches_;
    std::optional<RecordColumns> columns_;
    SurveyBeds beds_;
};

/// What one condition says of everything of the span that it judges, by its kind (findings.h): quantity
/// that is a floor, time, series of wave height or wind, record, watch, surface. Of another kind, nothing.
std::vector<Finding> findings_of(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                 BookRecords& records);

}  // namespace spoilbook
