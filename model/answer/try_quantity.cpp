// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <map>

#include "model/answer/try_parts.h"
#include "model/consent/first_over.h"
#include "model/consent/floor_ends.h"
#include "model/consent/limit.h"
#include "model/consent/quantity_text.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook::trial {

namespace {

class QuantityTrial {
 public:
    QuantityTrial(const Asked& asked, const Quantity& quantity)
        : asked_(asked),
          quantity_(quantity),
          members_(members_of(quantity, asked.ledger.season())),
          counts_(counts_of(quantity, members_, asked.candidate, asked.ledger)) {}

    Trial run() {
        const bool dredged = quantity_.scope.activity == Activity::dredge;
        trial_.of = dredged ? "loads" : "releases";
        for (const auto& line : dredged ? asked_.ledger.dredged() : asked_.ledger.released())
            lines_.emplace(line.at, &line);
        count_lines();
        if (quantity_.at_most)
            try_limit();
        else
            try_floor();
        return std::move(trial_);
    }

 private:
    /// Each release or load in the scope once, however many parts of it count.
    void count_lines() {
        const Count* last = nullptr;
        for (const auto& count : counts_) {
            if (count.opening || !asked_.holds(count.at)) continue;
            const bool same = last != nullptr && last->at == count.at && last->load == count.load;
            if (!same) ++trial_.looked_at;
            if (!same && count.unknown) ++trial_.cannot_tell;
            last = &count;
        }
    }

    void try_limit() {
        std::map<int, bool> over;
        each_moment(asked_.ledger, asked_.candidate, quantity_, asked_.from, asked_.to,
                    [&](const LimitMoment& moment) {
                        bool& before = over[moment.member];
                        if (moment.over() && !before) ++trial_.times;
                        if (moment.over() && (!before || added_to(moment))) add_pass(moment);
                        before = moment.over();
                    });
    }

    /// A share's every member is judged whenever the total grows: a pass is named by what was added to it.
    [[nodiscard]] bool added_to(const LimitMoment& moment) const {
        const auto at = std::lower_bound(counts_.begin(), counts_.end(), moment.at,
                                         [](const Count& count, Instant t) { return count.at < t; });
        return std::any_of(at, counts_.end(), [&](const Count& count) {
            return count.at == moment.at && count.member == moment.member;
        });
    }

    [[nodiscard]] std::string member_name(int member) const {
        return member < 0 ? std::string() : members_[static_cast<std::size_t>(member)].name;
    }

    void add_pass(const LimitMoment& moment) {
        const int decimals = shown_decimals(quantity_);
        const double scale = shown_scale(quantity_);
        const auto line = lines_.find(moment.at);
        TrialPass pass;
        if (line != lines_.end()) pass = pass_at(*line->second, "");
        pass.at = moment.at;
        pass.member = member_name(moment.member);
        pass.value = moment.used * scale;
        pass.level = moment.limit * scale;
        pass.why = fmt::format("{:.{}f} of {:.{}f} {}", rounded_up(*pass.value, decimals), decimals,
                               *pass.level, decimals, unit_text(quantity_));
        trial_.passes.push_back(std::move(pass));
    }

    void try_floor() {
        trial_.why_not = why_floor_is_not_judged(quantity_);
        trial_.of = "windows";
        trial_.floor = true;
        trial_.looked_at = trial_.cannot_tell = 0;
        const Period span{asked_.from, asked_.to + 1};
        for (const auto& floor : floors_ended(asked_.ledger, asked_.candidate, quantity_, span, asked_.to)) {
            ++trial_.looked_at;
            if (floor.judged == Compliance::cannot_tell) ++trial_.cannot_tell;
            if (floor.judged != Compliance::breached) continue;
            ++trial_.times;
            TrialPass pass;
            pass.at = floor.state.as_at;
            pass.what = floor.window;
            pass.member = floor.state.member ? floor.state.member->name : "";
            pass.value = floor.state.used * shown_scale(quantity_);
            pass.level = *floor.state.limit * shown_scale(quantity_);
            pass.why = floor.why;
            trial_.passes.push_back(std::move(pass));
        }
    }

    const Asked& asked_;
    const Quantity& quantity_;
    std::vector<Member> members_;
    std::vector<Count> counts_;
    std::multimap<Instant, const LedgerLine*> lines_;
    Trial trial_;
};

}  // namespace

Trial of_quantity(const Asked& asked) {
    const auto quantity = quantity_from(asked.candidate, asked.ledger.season().zone);
    if (quantity && (quantity->value || quantity->share_of_total))
        return QuantityTrial(asked, *quantity).run();
    Trial trial;
    trial.why_not = "it has no limit yet";
    return trial;
}

}  // namespace spoilbook::trial
