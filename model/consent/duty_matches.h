// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/duty_calendar.h"

namespace spoilbook {

/// Every time of the duties of one number under one consent, ascending by when they arise.
struct DutiesOfConsent {
    Id consent;
    std::vector<DutyTime> times;
};

/// Whether a record of that number names no consent: it may be for the duty of any that has one.
bool any_record_names_no_consent(const Season& season, const std::string& number, Instant as_at);

/// Gives each record of what was done by `as_at` to the one time that it is for: that whose period or event
/// begins at covers_from, else on its local day, else whose period holds it; with a blank covers_from the
/// earliest that had arisen, or that of a date. Records that say which time come before those that do not,
/// those that name their consent before those that do not, then the earlier ones. A time takes one record.
/// One that names no consent is for one time too, of the first consent that fits it best. `all`: the duties
/// of that number of every consent, in the order of the book; of one alone where each record names its own.
void match_done(const Season& season, const std::string& number, Instant as_at,
                std::vector<DutiesOfConsent>& all);

}  // namespace spoilbook
