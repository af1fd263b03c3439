// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/book_records.h"

#include "model/answer/surface_findings.h"
#include "model/book/held_values.h"

namespace spoilbook {

namespace {

template <class R>
HeldColumns columns_of(const Book& book) {
    const Kind& kind = definition<R>().kind();
    return {kind, held_values(book, kind)};
}

}  // namespace

std::vector<Watch> watches_of(const Book& book) {
    std::vector<Watch> watches;
    for (const Row& row : book.rows(definition<Watch>().kind()))
        watches.push_back(definition<Watch>().read(row));
    return watches;
}

const std::vector<Watch>& BookRecords::watches() {
    if (!watches_) watches_ = watches_of(book_);
    return *watches_;
}

const RecordColumns& BookRecords::columns() {
    if (!columns_) columns_ = {columns_of<Trip>(book_), columns_of<Load>(book_), columns_of<Release>(book_)};
    return *columns_;
}

std::vector<Finding> findings_of(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                 BookRecords& records) {
    if (condition.kind == "quantity") return floor_findings(ledger, condition, span);
    if (condition.kind == "time") return time_findings(ledger, condition, span);
    if (condition.kind == "series") return sea_findings(ledger, condition, span);
    if (condition.kind == "record") return record_findings(ledger, condition, span, records.columns());
    if (condition.kind == "watch") return watch_findings(ledger, condition, span, records.watches());
    if (condition.kind == "surface")
        return surface_findings(ledger.season(), condition, span, records.beds());
    return {};
}

}  // namespace spoilbook
