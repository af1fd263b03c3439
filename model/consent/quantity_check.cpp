// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/quantity_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <limits>
#include <set>

#include "model/consent/limit.h"
#include "model/consent/quantity_text.h"
#include "model/consent/rolling_turns.h"
#include "model/unit/shown.h"

namespace spoilbook {

namespace {

CheckReason outcome(CheckState state, std::string why, std::optional<Instant> until = std::nullopt) {
    CheckReason reason;
    reason.state = state;
    reason.until = until;
    reason.why = std::move(why);
    return reason;
}

std::string over_text(const Quantity& quantity, double used, double limit, const std::string& member) {
    const int decimals = adding_of(quantity) == Adding::distinct ? 0 : 1;
    const double scale = shown_scale(quantity);
    return fmt::format("with this load {:.{}f} of {:.{}f} {} would be used{}",
                       rounded_up(used * scale, decimals), decimals, limit * scale, decimals,
                       unit_text(quantity), member.empty() ? "" : " for " + member);
}

/// Of those that were done by then, not of those that the ledger thinks of: h.
std::optional<double> longest_release(const Ledger& ledger, Instant by) {
    std::optional<double> longest;
    const auto& instead = ledger.instead();
    for (const auto& line : lines_between(ledger.released(), std::nullopt, by)) {
        const bool is_done = std::none_of(instead.begin(), instead.end(),
                                          [&](const Trip& trip) { return line.release->trip == &trip; });
        if (is_done && line.hours) longest = std::max(longest.value_or(0), *line.hours);
    }
    return longest;
}

}  // namespace

QuantityCheck::QuantityCheck(const Ledger& ledger, const Condition& condition, const Quantity& quantity,
                             const Id& load, Instant at, OwnBy own_by)
    : season_(ledger.season()), quantity_(quantity), at_(at) {
    const Consent* consent = season_.consents.find(condition.consent);
    if (consent != nullptr) consent_ = *consent;
    members_ = members_of(quantity, season_);
    Quantity own_quantity = quantity;
    if (own_by == OwnBy::any_method) own_quantity.method.clear();
    std::optional<std::uint32_t> number;
    for (const auto& line : lines_between(ledger.released(), at, at)) {
        if (line.load == nullptr || line.load->id != load) continue;
        number = line.load_number;
        ground_ = line.ground;
        own_ = counts_of(own_quantity, members_, line, ledger, InScope::as_known);
        anywhere_ = counts_of(own_quantity, members_, line, ledger, InScope::as_planned);
        possible_ = own_by == OwnBy::any_method
                        ? anywhere_
                        : counts_of(own_quantity, members_, line, ledger, InScope::as_may_be);
    }
    // A load still to be read goes where nobody has said yet: what may count is left room for.
    if (own_by == OwnBy::any_method) own_ = possible_;
    window_ = window_at(quantity.window, consent_, season_, at);
    for (auto& count : counts_of(quantity, members_, condition, ledger, {counts_from(), at, false, true})) {
        const bool is_own = !count.opening && count.load == number && count.at == at;
        if (is_own || count.at > at || quantity.window.kind == WindowKind::trip) continue;
        (count.doubtful ? doubtful_others_ : others_).push_back(std::move(count));
    }
    find_unplaced();
    if (quantity.measure == LimitMeasure::hours) longest_release_ = longest_release(ledger, at);
}

/// What the window at the plan or a later one may hold. A later one begins no earlier, but for the clamping
/// of months and the clock's changes: hours.
std::optional<Instant> QuantityCheck::counts_from() const {
    if (!window_ || !window_->start) return std::nullopt;
    return *window_->start - 3 * ms_per_day;
}

void QuantityCheck::find_unplaced() {
    unplaced_ = quantity_.each_of != EachOf::none &&
                std::any_of(own_.begin(), own_.end(), [](const Count& count) { return count.member < 0; });
}

/// What the window at the planned instant holds without the load. The window must be.
Sweep QuantityCheck::sweep() const {
    Sweep others(others_, static_cast<int>(members_.size()), adding_of(quantity_));
    others.move_to(at_, *window_);
    return others;
}

/// What the load adds to a member, or to all together, when it is released at t.
double QuantityCheck::added(const Sweep& others, std::optional<int> member, Instant t, Own own) const {
    double sum = 0;
    std::set<std::uint32_t> keys;
    for (const auto& count : own_) {
        const bool moves = own.moved_to && (!unplaced_ || count.member < 0);
        if (!own.in || (member && (moves ? *own.moved_to : count.member) != *member)) continue;
        if (adding_of(quantity_) == Adding::amounts)
            sum += count.amount.value * own.share;
        else if (own.share > 0)
            keys.insert(quantity_.measure == LimitMeasure::days ? day_key(season_.zone.day_of(t))
                                                                : count.key);
    }
    for (const auto key : keys)
        sum += others.holds(member, key) ? 0 : 1;
    return sum;
}

/// `more`: what else is thought to count for the member; in the total it is already.
UsedOf QuantityCheck::used(const Sweep& others, int member, Instant t, Own own, double more) const {
    const double total = quantity_.share_of_total ? others.total() + added(others, std::nullopt, t, own) : 0;
    return used_of(quantity_, others.of(member) + added(others, member, t, own) + more, total);
}

bool QuantityCheck::may_be_of(const Count& count, int member) const {
    return member >= 0 &&
           spoilbook::may_be_of(count, quantity_, members_[static_cast<std::size_t>(member)], season_);
}

/// What may be the member's, and nobody recorded whose it is.
double QuantityCheck::unsaid(const Sweep& others, int member) const {
    double sum = 0;
    std::set<std::uint32_t> keys;
    for (const auto& count : others_) {
        if (!may_be_of(count, member) || !window_->counts(count.at, at_)) continue;
        if (is_in_already(count, member, quantity_, others_)) continue;
        if (adding_of(quantity_) == Adding::amounts)
            sum += count.amount.value;
        else if (!others.holds(member, count.key) && !is_day_of_plan(count.key))
            keys.insert(count.key);
    }
    return sum + static_cast<double>(keys.size());
}

/// The planned load adds that day itself.
bool QuantityCheck::is_day_of_plan(std::uint32_t key) const {
    return quantity_.measure == LimitMeasure::days && key == day_key(season_.zone.day_of(at_));
}

bool QuantityCheck::unsaid_is_unknown(int member) const {
    return std::any_of(others_.begin(), others_.end(), [&](const Count& count) {
        return count.unknown && may_be_of(count, member) && window_->counts(count.at, at_);
    });
}

/// The planned load and those that go with it are counted with no hours: nobody knows yet. `at_worst`: with
/// what may be the member's too.
bool QuantityCheck::may_take_too_long(const Sweep& others, int member, bool at_worst) const {
    const auto limit = limit_at(quantity_, at_);
    if (quantity_.measure != LimitMeasure::hours || !limit) return false;
    const auto is_planned = [&](const Count& count) {
        const bool is_its = count.member == member || (at_worst && may_be_of(count, member));
        return is_its && !count.opening && count.at == at_ && count.amount.value <= 0;
    };
    const auto planned =
        std::count_if(others_.begin(), others_.end(), is_planned) + (own_.empty() ? 0 : std::ptrdiff_t{1});
    if (planned == 0) return false;
    if (!longest_release_) return true;
    const double more =
        (at_worst ? unsaid(others, member) : 0) + static_cast<double>(planned) * *longest_release_;
    const auto part = used(others, member, at_, {}, more);
    return part.judged && exceeds(part.used, *limit);
}

std::string QuantityCheck::too_long_text() const {
    const std::string unknown = "how long the doors will stand open is not known: ";
    if (!longest_release_) return unknown + "no release on record says how long one takes";
    return unknown + fmt::format("as long as the longest on record, {:.2f} h, would not fit",
                                 rounded_up(*longest_release_, 2));
}

/// Whether the load, released at t, would meet the limit. Moves the sweep to t.
bool QuantityCheck::fits(Sweep& others, int member, Instant t, Own own) const {
    const auto limit = limit_at(quantity_, t);
    const auto window = window_at(quantity_.window, consent_, season_, t);
    if (!limit || !window || !window->counts(t, t)) return true;
    others.move_to(t, *window);
    const auto part = used(others, member, t, own);
    return !part.judged || !exceeds(part.used, *limit);
}

/// For a share of the total so far every load matters: with it the total may pass the floor.
bool QuantityCheck::unknown(int member) const {
    const bool all = quantity_.share_of_total && !quantity_.of_value;
    const auto matters = [&](const Count& count) {
        return count.unknown && (all || count.member == member) && window_->counts(count.at, at_);
    };
    return std::any_of(others_.begin(), others_.end(), matters) ||
           std::any_of(own_.begin(), own_.end(), matters);
}

CheckReason QuantityCheck::judge(int member) const {
    const auto limit = limit_at(quantity_, at_);
    if (!limit) return outcome(CheckState::clear, "");
    const auto part = used(sweep(), member, at_, {});
    if (part.judged && exceeds(part.used, *limit)) {
        const std::string name = member < 0 ? "" : members_[static_cast<std::size_t>(member)].name;
        return outcome(CheckState::hold, over_text(quantity_, part.used, *limit, name), until(member, {}));
    }
    if (unknown(member)) return outcome(CheckState::cannot_tell, "a load that counts cannot be valued");
    if (may_take_too_long(sweep(), member, false)) return outcome(CheckState::cannot_tell, too_long_text());
    return outcome(CheckState::clear, "");
}

/// It is not said which member the load goes to: it holds only where none has room. A ground without cells
/// has none to fill.
CheckReason QuantityCheck::judge_unplaced() const {
    const std::string each = each_of_text(quantity_.each_of);
    const auto all = rooms();
    if (all.empty()) return outcome(CheckState::clear, "");
    if (std::any_of(all.begin(), all.end(), [](const MemberRoom& room) { return room.has_room; }))
        return outcome(CheckState::cannot_tell, "it is not said which " + each + " it goes to");
    std::optional<Instant> first;
    for (const int i : where_it_may_go()) {
        const auto ends = until(i, {true, i});
        if (ends && (!first || *ends < *first)) first = ends;
    }
    return outcome(CheckState::hold, "no " + each + " has room for this load", first);
}

CheckReason QuantityCheck::reason() const {
    CheckReason found = worst();
    const bool others_may_be_in =
        !doubtful_others_.empty() ||
        std::any_of(others_.begin(), others_.end(), [](const Count& count) { return count.member_unsaid; });
    if (found.state != CheckState::clear || possible_.empty()) return found;
    if (possible_.size() == own_.size() && !others_may_be_in) return found;
    QuantityCheck at_worst = *this;
    at_worst.own_ = possible_;
    const auto by_time = [](const Count& a, const Count& b) { return a.at < b.at; };
    std::vector<Count> all;
    std::merge(others_.begin(), others_.end(), doubtful_others_.begin(), doubtful_others_.end(),
               std::back_inserter(all), by_time);
    at_worst.others_ = std::move(all);
    at_worst.find_unplaced();
    if (!at_worst.may_not_fit()) return found;
    const bool own_is_known = possible_.size() == own_.size() && !at_worst.unplaced_;
    return outcome(CheckState::cannot_tell,
                   own_is_known
                       ? "what went before may count here, for all that is recorded of it, and is not "
                         "known to leave room"
                       : "it is not said where or with what it goes: it may count here, and is not "
                         "known to fit");
}

/// Whether any member that the load may go to has no room for it, as far as that is known.
bool QuantityCheck::may_not_fit() const {
    const auto limit = limit_at(quantity_, at_);
    if (!limit || !window_ || !window_->counts(at_, at_)) return false;
    const auto others = sweep();
    const auto fails = [&](int member, const Own& own) {
        const auto part = used(others, member, at_, own, unsaid(others, member));
        return (part.judged && exceeds(part.used, *limit)) || unknown(member) || unsaid_is_unknown(member) ||
               may_take_too_long(others, member, true);
    };
    if (unplaced_) {
        const auto all = where_it_may_go();
        return std::any_of(all.begin(), all.end(), [&](int i) { return fails(i, {true, i}) || unknown(-1); });
    }
    return std::any_of(own_.begin(), own_.end(), [&](const Count& count) { return fails(count.member, {}); });
}

CheckReason QuantityCheck::worst() const {
    CheckReason worst = outcome(CheckState::clear, "");
    if (own_.empty() || !window_ || !window_->counts(at_, at_)) return worst;
    if (unplaced_) worst = judge_unplaced();
    std::set<int> own_members;
    for (const auto& count : own_)
        own_members.insert(count.member);
    for (const int member : own_members) {
        if (unplaced_ && member < 0) continue;
        auto judged = judge(member);
        if (judged.state > worst.state) worst = std::move(judged);
    }
    return worst;
}

/// A load that goes to a ground goes to one of its cells.
std::vector<int> QuantityCheck::where_it_may_go() const {
    std::vector<int> members;
    for (int i = 0; i < static_cast<int>(members_.size()); ++i) {
        const Cell* cell = quantity_.each_of == EachOf::cell
                               ? season_.cells.find(members_[static_cast<std::size_t>(i)].id)
                               : nullptr;
        if (cell == nullptr || !ground_ || cell->ground == ground_) members.push_back(i);
    }
    return members;
}

std::vector<MemberRoom> QuantityCheck::rooms() const {
    std::vector<MemberRoom> rooms;
    if (!window_ || !window_->counts(at_, at_) || anywhere_.empty()) return rooms;
    QuantityCheck anywhere = *this;
    anywhere.own_ = anywhere_;
    anywhere.find_unplaced();
    const auto limit = limit_at(quantity_, at_);
    const auto others = sweep();
    for (const int i : where_it_may_go()) {
        const auto& member = members_[static_cast<std::size_t>(i)];
        const double before = anywhere.used(others, i, at_, {false, std::nullopt}).used;
        const auto after = anywhere.used(others, i, at_, {true, i});
        MemberRoom& room = rooms.emplace_back(MemberRoom{member.id, member.name});
        if (!limit) continue;
        room.has_room = !after.judged || !exceeds(after.used, *limit);
        room.share = *limit > 0 ? before / *limit : std::numeric_limits<double>::infinity();
        room.known = std::none_of(others_.begin(), others_.end(), [&](const Count& count) {
            return count.unknown && count.member == i && window_->counts(count.at, at_);
        });
    }
    return rooms;
}

/// By halving: what is used grows with the load, whatever a share is of.
double QuantityCheck::largest_share(const Sweep& others, int member, std::optional<int> moved_to) const {
    constexpr int halvings = 50;
    const auto limit = limit_at(quantity_, at_);
    const auto used_with = [&](double share) { return used(others, member, at_, {true, moved_to, share}); };
    if (!limit || !used_with(1).judged || !exceeds(used_with(1).used, *limit)) return 1;
    double least = 0, most = 1;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (least + most) / 2;
        const auto part = used_with(middle);
        // Not by more than the rounding of sums, as elsewhere: it is to stay within the limit itself.
        (!part.judged || part.used <= *limit ? least : most) = middle;
    }
    return adding_of(quantity_) == Adding::amounts ? least : 0;
}

std::optional<double> QuantityCheck::largest_share() const {
    if (own_.empty() || !window_ || !window_->counts(at_, at_)) return 1;
    const auto others = sweep();
    double largest = 1;
    std::set<int> own_members;
    for (const auto& count : own_)
        own_members.insert(count.member);
    for (const int member : own_members) {
        if (unknown(member) || may_take_too_long(others, member, false)) return std::nullopt;
        if (!unplaced_ || member >= 0)
            largest = std::min(largest, largest_share(others, member, std::nullopt));
    }
    if (!unplaced_) return largest;
    const auto all = where_it_may_go();
    double best = all.empty() ? 1 : 0;
    for (const int i : all)
        best = std::max(best, largest_share(others, i, i));
    return std::min(largest, best);
}

/// The instants after the plan at which the limit may let the load go, ascending.
std::vector<Instant> QuantityCheck::turns() const {
    std::vector<Instant> turns;
    const auto kind = quantity_.window.kind;
    if (kind == WindowKind::rolling || kind == WindowKind::mean)
        turns = rolling_turns(quantity_.window, season_, others_, at_);
    else if (window_->end && *window_->end > at_)
        turns.push_back(*window_->end);
    const auto unlocked = quantity_.reserve ? quantity_.reserve->unlocked_on : std::nullopt;
    if (unlocked && *unlocked > at_) turns.push_back(*unlocked);
    std::sort(turns.begin(), turns.end());
    return turns;
}

std::optional<Instant> QuantityCheck::until(int member, Own own) const {
    auto others = sweep();
    for (const auto turn : turns()) {
        if (fits(others, member, turn, own)) return turn;
    }
    return std::nullopt;
}

}  // namespace spoilbook
