// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_matches.h"

#include <algorithm>
#include <tuple>

namespace spoilbook {

namespace {

bool is_of(const DutyDone& row, const std::string& number, Instant as_at) {
    return row.condition == number && row.done_at && *row.done_at <= as_at;
}

/// In the order in which they are given to a time.
std::vector<const DutyDone*> records_of(const Season& season, const std::string& number, Instant as_at) {
    std::vector<const DutyDone*> records;
    for (const auto& row : season.duties_done.rows()) {
        if (is_of(row, number, as_at)) records.push_back(&row);
    }
    std::stable_sort(records.begin(), records.end(), [](const DutyDone* a, const DutyDone* b) {
        const auto rank = [](const DutyDone* row) {
            return std::tuple(!row->covers_from.has_value(), row->consent == Id{}, *row->done_at);
        };
        return rank(a) < rank(b);
    });
    return records;
}

template <class Test>
DutyTime* first_open(std::vector<DutyTime>& times, const Test& test) {
    const auto found = std::find_if(times.begin(), times.end(),
                                    [&](const DutyTime& time) { return time.done == nullptr && test(time); });
    return found == times.end() ? nullptr : &*found;
}

/// When the period or the event of a time begins. A step of an amount that is not reached yet cannot have
/// been done: nothing.
std::optional<Instant> begins(const DutyTime& time) {
    if (!time.arises) return std::nullopt;
    return time.covers ? std::optional(time.covers->from) : time.arises;
}

/// The duties that a record may be for, and which time of them.
class Candidates {
 public:
    Candidates(const Zone& zone, const DutyDone& done, std::vector<DutiesOfConsent>& all)
        : zone_(zone), done_(done) {
        for (auto& one : all) {
            if (done.consent == Id{} || done.consent == one.consent) duties_.push_back(&one);
        }
    }

    DutyTime* best() {
        if (!done_.covers_from) return earliest_arisen();
        const Instant from = *done_.covers_from;
        if (auto* exact = first([&](const DutyTime& time) { return begins(time) == from; })) return exact;
        const auto same_day = [&](const DutyTime& time) {
            const auto begin = begins(time);
            return begin && zone_.day_of(*begin) == zone_.day_of(from);
        };
        if (auto* that_day = first(same_day)) return that_day;
        return first(
            [&](const DutyTime& time) { return time.arises && time.covers && time.covers->contains(from); });
    }

 private:
    template <class Test>
    DutyTime* first(const Test& test) {
        for (auto* one : duties_) {
            if (auto* found = first_open(one->times, test)) return found;
        }
        return nullptr;
    }

    DutyTime* earliest_arisen() {
        DutyTime* earliest = nullptr;
        for (auto* one : duties_) {
            auto* found = first_open(one->times, [&](const DutyTime& time) {
                return time.duty.when == DutyWhen::date ||
                       (time.arises && *time.arises <= *done_.done_at && time.state != DutyState::nil);
            });
            if (found != nullptr && (earliest == nullptr || *found->arises < *earliest->arises))
                earliest = found;
        }
        return earliest;
    }

    const Zone& zone_;
    const DutyDone& done_;
    std::vector<DutiesOfConsent*> duties_;
};

}  // namespace

bool any_record_names_no_consent(const Season& season, const std::string& number, Instant as_at) {
    const auto& rows = season.duties_done.rows();
    return std::any_of(rows.begin(), rows.end(),
                       [&](const DutyDone& row) { return row.consent == Id{} && is_of(row, number, as_at); });
}

void match_done(const Season& season, const std::string& number, Instant as_at,
                std::vector<DutiesOfConsent>& all) {
    for (const auto* record : records_of(season, number, as_at)) {
        DutyTime* time = Candidates(season.zone, *record, all).best();
        if (time == nullptr) continue;
        time->done = record;
        time->state = DutyState::done;
    }
}

}  // namespace spoilbook
