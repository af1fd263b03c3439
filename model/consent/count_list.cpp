// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/count_list.h"

#include <algorithm>
#include <limits>
#include <map>

#include "model/consent/scope_filter.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

template <class R>
std::vector<Member> all_listed(const Shelf<R>& shelf, std::string R::*member,
                               const std::vector<std::string>& names) {
    std::vector<Member> members;
    for (const auto& row : shelf.rows()) {
        if (listed(names, row.*member)) members.push_back({row.*member, row.id});
    }
    return members;
}

std::vector<Member> cells_in_scope(const Scope& scope, const Season& season) {
    std::vector<Member> members;
    for (const auto& cell : season.cells.rows()) {
        const bool in = cell.kind != "exclusion" && listed(scope.cells, cell.cell) &&
                        listed(scope.grounds, name_of(season.grounds, cell.ground, &Ground::ground));
        if (in) members.push_back({cell.cell, cell.id});
    }
    std::map<std::string, int> bearers;
    for (const auto& member : members)
        ++bearers[member.name];
    for (auto& member : members) {
        // A cell's name is its ground's own: two grounds may each have an A1.
        if (bearers[member.name] < 2) continue;
        const Id ground = season.cells.find(member.id)->ground;
        member.name = name_of(season.grounds, ground, &Ground::ground) + "/" + member.name;
    }
    return members;
}

/// Turns lines into counts for one limit.
class CountMaker {
 public:
    CountMaker(const Quantity& quantity, const std::vector<Member>& members, const Ledger& ledger,
               InScope in_scope, bool with_u, bool with_doubtful)
        : quantity_(quantity),
          season_(ledger.season()),
          measure_(measure_of(quantity)),
          method_(quantity.method.empty() ? std::nullopt : method_named(quantity.method)),
          filter_(quantity.scope, season_, in_scope != InScope::as_known, in_scope == InScope::as_planned),
          with_u_(with_u) {
        if (with_doubtful) may_be_.emplace(quantity.scope, season_, true);
        for (std::size_t i = 0; i < members.size(); ++i)
            numbers_.emplace(members[i].id, static_cast<int>(i));
    }

    void add(const LedgerLine& line) {
        const bool is_in = filter_.takes(line);
        if (!is_in && !(may_be_ && may_be_->takes(line))) return;
        const bool parts = filter_.by_part() || quantity_.each_of == EachOf::claim;
        if (parts && line.counted != nullptr)
            add_parts(line, is_in);
        else if (!filter_.by_part() || may_be_)
            add_whole(line, !is_in || filter_.by_part());
    }

    void reserve(std::size_t lines) { counts_.reserve(lines); }
    std::vector<Count> take() { return std::move(counts_); }

 private:
    [[nodiscard]] Count started(const LedgerLine& line, int member) const {
        Count count;
        count.at = line.at;
        count.member = member;
        count.member_unsaid = member < 0 && is_unsaid(line);
        if (count.member_unsaid && quantity_.each_of == EachOf::cell) count.ground = line.ground;
        count.load = line.load_number;
        count.key = quantity_.measure == LimitMeasure::days ? day_key(line.day) : line.trip_number;
        if (quantity_.measure == LimitMeasure::hours) {
            count.unknown = !line.hours;
            count.amount.value = line.hours.value_or(0);
        }
        return count;
    }

    [[nodiscard]] int number_of(const Id& id) const {
        const auto place = numbers_.find(id);
        return place == numbers_.end() ? -1 : place->second;
    }

    [[nodiscard]] int member_of(const LedgerLine& line) const {
        switch (quantity_.each_of) {
            case EachOf::ground:
                return number_of(line.ground);
            case EachOf::cell:
                return number_of(line.cell);
            case EachOf::material:
                return number_of(line.material);
            case EachOf::plant:
                return number_of(line.barge);
            default:
                return -1;
        }
    }

    /// Whether a line may have a member that nobody recorded. What has a position lies in no cell for sure.
    [[nodiscard]] bool is_unsaid(const LedgerLine& line) const {
        switch (quantity_.each_of) {
            case EachOf::ground:
                return season_.grounds.find(line.ground) == nullptr;
            case EachOf::cell:
                return season_.cells.find(line.cell) == nullptr &&
                       !(line.release != nullptr && line.release->lat && line.release->lon);
            case EachOf::material:
                return line.load == nullptr || season_.materials.find(line.load->material) == nullptr;
            case EachOf::plant:
                return line.load == nullptr || season_.barges.find(line.load->barge) == nullptr;
            default:
                return quantity_.each_of == EachOf::claim;
        }
    }

    /// Amount of a line (or one part of its load) in the limit's measure; `unknown` where none is known.
    void value(const LedgerLine& line, std::optional<std::size_t> part, Count& count) const {
        if (!measure_) return;
        if (is_plain(line)) {
            const auto& counted = part ? line.counted->parts[*part].amounts : line.counted->whole;
            const auto& amount = counted.of(*measure_);
            count.unknown = !amount;
            if (amount) count.amount.value = *amount * line.share;
            return;
        }
        count.unknown = true;
        const auto* result = line.figures == nullptr ? nullptr : line.figures->counted_by(method_, *measure_);
        if (result == nullptr) return;
        const bool dredged = line.release == nullptr;  // then what lay in the hopper before does not count
        if (part)
            put((dredged ? result->dredged(*part) : result->part(*part)).of(*measure_), line.share, count);
        else if (dredged)
            put(dredged_amount(line, quantity_.method, *measure_), line.share, count);
        else
            put(result->of(*measure_), line.share, count);
    }

    /// Whether a number alone is wanted, of what is released by whatever method gives it.
    [[nodiscard]] bool is_plain(const LedgerLine& line) const {
        return !with_u_ && !method_ && line.release != nullptr && line.counted != nullptr;
    }

    void put(const std::optional<Estimate>& amount, double share, Count& count) const {
        count.unknown = !amount.has_value();
        if (!amount) return;
        if (with_u_)
            count.amount = *amount * share;
        else
            count.amount.value = amount->value * share;
    }

    void add_whole(const LedgerLine& line, bool doubtful) {
        Count count = started(line, member_of(line));
        count.doubtful = doubtful;
        value(line, std::nullopt, count);
        counts_.push_back(std::move(count));
    }

    void add_parts(const LedgerLine& line, bool is_in) {
        std::vector<int> members_in;
        if (is_in) add_parts(line, false, members_in);
        if (may_be_) add_parts(line, true, members_in, is_in);
    }

    /// The parts that are in the scope, or the doubtful ones: of a line that `is_in`, only those that are
    /// not.
    void add_parts(const LedgerLine& line, bool doubtful, std::vector<int>& members_in, bool is_in = false) {
        const bool by_claim = quantity_.each_of == EachOf::claim;
        for (std::size_t i = 0; i < line.counted->parts.size(); ++i) {
            const auto& part = line.counted->parts[i];
            const bool is_known = filter_.takes_part(part.claim, part.material, line.at);
            const auto may_be = [&] { return may_be_->takes_part(part.claim, part.material, line.at); };
            if (doubtful ? (is_in && is_known) || !may_be() : !is_known) continue;
            Count count = started(line, by_claim ? number_of(part.claim) : member_of(line));
            count.doubtful = doubtful;
            if (by_claim) count.member_unsaid = season_.claims.find(part.claim) == nullptr;
            if (quantity_.measure == LimitMeasure::hours || (doubtful && !measure_)) {
                // Hours cannot be split: they count whole for each member that had any part, and once.
                const auto& had = members_in;
                if (std::find(had.begin(), had.end(), count.member) != had.end()) continue;
            }
            if (!measure_) members_in.push_back(count.member);
            value(line, i, count);
            counts_.push_back(std::move(count));
        }
    }

    const Quantity& quantity_;
    const Season& season_;
    std::optional<Measure> measure_;
    std::optional<Method> method_;
    ScopeFilter filter_;
    std::optional<ScopeFilter> may_be_;  ///< where doubtful counts are wanted too
    bool with_u_;
    std::unordered_map<Id, int> numbers_;
    std::vector<Count> counts_;
};

bool has_time(const Opening& opening) {
    return opening.from || opening.to;
}

/// Whether a window of the kind has a beginning of its own, so that an amount of no known time is in none.
bool begins_in_time(WindowKind kind) {
    return kind != WindowKind::term && kind != WindowKind::phase && kind != WindowKind::trip;
}

/// An opening amount counts as one event, at the last instant of its span.
Instant instant_of(const Opening& opening, const Quantity& quantity, const Consent* consent) {
    Instant at{std::numeric_limits<std::int64_t>::min() / 4};
    if (opening.to)
        at = *opening.to - 1;
    else if (opening.from)
        at = *opening.from;
    // The term holds every opening amount, also of before the consent commenced.
    if (quantity.window.kind == WindowKind::term && consent != nullptr && consent->commences)
        at = std::max(at, *consent->commences);
    return at;
}

void add_openings(const Quantity& quantity, const std::vector<Member>& members, const Condition& condition,
                  const Season& season, std::vector<Count>& counts) {
    if (quantity.window.kind == WindowKind::trip) return;
    for (const auto& opening : season.openings.rows()) {
        if (opening.consent != condition.consent || opening.condition != condition.condition ||
            !opening.value || (!has_time(opening) && begins_in_time(quantity.window.kind)))
            continue;
        Count count;
        count.at = instant_of(opening, quantity, season.consents.find(condition.consent));
        count.amount = Estimate{*opening.value, opening.u.value_or(0), {}};
        count.opening = true;
        for (std::size_t i = 0; i < members.size(); ++i) {
            if (!opening.member.empty() && members[i].name == opening.member)
                count.member = static_cast<int>(i);
        }
        counts.push_back(std::move(count));
    }
}

}  // namespace

std::vector<Member> members_of(const Quantity& quantity, const Season& season) {
    const Scope& scope = quantity.scope;
    switch (quantity.each_of) {
        case EachOf::claim:
            return all_listed(season.claims, &Claim::claim, scope.claims);
        case EachOf::ground:
            return all_listed(season.grounds, &Ground::ground, scope.grounds);
        case EachOf::cell:
            return cells_in_scope(scope, season);
        case EachOf::material:
            return all_listed(season.materials, &Material::material, scope.materials);
        case EachOf::plant:
            return all_listed(season.barges, &Barge::name, scope.plant);
        case EachOf::none:
            break;
    }
    return {};
}

bool may_be_of(const Count& count, const Quantity& quantity, const Member& member, const Season& season) {
    if (!count.member_unsaid) return false;
    const Cell* cell = quantity.each_of == EachOf::cell ? season.cells.find(member.id) : nullptr;
    return cell == nullptr || !count.ground || cell->ground == count.ground;
}

bool is_in_already(const Count& count, int member, const Quantity& quantity,
                   const std::vector<Count>& counts) {
    if (measure_of(quantity)) return false;
    // A line's parts are of one instant: a season without claims asks this for every line that it has.
    const auto [first, last] = std::equal_range(counts.begin(), counts.end(), count,
                                                [](const Count& a, const Count& b) { return a.at < b.at; });
    return std::any_of(first, last, [&](const Count& other) {
        return other.member == member && !other.doubtful && other.load == count.load &&
               other.key == count.key;
    });
}

std::uint32_t day_key(Day day) {
    return static_cast<std::uint32_t>(std::max(0, days_between(day, Day{1970, 1, 1})));
}

std::vector<Count> counts_of(const Quantity& quantity, const std::vector<Member>& members,
                             const Condition& condition, const Ledger& ledger, const CountsWanted& wanted) {
    CountMaker maker(quantity, members, ledger, InScope::as_known, wanted.with_u, wanted.with_doubtful);
    const auto& lines = quantity.scope.activity == Activity::dredge ? ledger.dredged() : ledger.released();
    const auto asked = lines_between(lines, wanted.from, wanted.to);
    maker.reserve(asked.size());
    for (const auto& line : asked)
        maker.add(line);
    auto counts = maker.take();
    const auto without_openings = counts.size();
    add_openings(quantity, members, condition, ledger.season(), counts);
    if (counts.size() == without_openings) return counts;  // in the order of the ledger
    std::stable_sort(counts.begin(), counts.end(),
                     [](const Count& a, const Count& b) { return a.at < b.at; });
    return counts;
}

std::vector<Count> counts_of(const Quantity& quantity, const std::vector<Member>& members,
                             const LedgerLine& line, const Ledger& ledger, InScope in_scope) {
    CountMaker maker(quantity, members, ledger, in_scope, true, false);
    maker.add(line);
    return maker.take();
}

}  // namespace spoilbook
