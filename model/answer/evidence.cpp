// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/evidence.h"

#include <algorithm>

namespace spoilbook {

namespace {

/// Finds the ledger's line of a count: the one of that load at that instant.
class LineFinder {
 public:
    explicit LineFinder(const std::vector<LedgerLine>& lines) : lines_(lines) {}

    [[nodiscard]] const LedgerLine* find(const Count& count) const {
        if (count.opening) return nullptr;
        auto at = std::lower_bound(lines_.begin(), lines_.end(), count.at,
                                   [](const LedgerLine& line, Instant t) { return line.at < t; });
        for (; at != lines_.end() && at->at == count.at; ++at) {
            if (at->load_number == count.load) return &*at;
        }
        return nullptr;
    }

 private:
    const std::vector<LedgerLine>& lines_;
};

int member_number(const LimitState& state, const std::vector<Member>& members) {
    if (!state.member) return -1;
    for (std::size_t i = 0; i < members.size(); ++i) {
        if (members[i].id == state.member->id) return static_cast<int>(i);
    }
    return -1;
}

/// A window of one trip holds that trip alone: the last.
void keep_last_trip(std::vector<Count>& counts) {
    if (counts.empty()) return;
    const auto key = counts.back().key;
    std::erase_if(counts, [key](const Count& count) { return count.key != key; });
}

std::vector<Count> counted(const Ledger& ledger, const LimitState& state, Instant as_at) {
    const auto members = members_of(state.quantity, ledger.season());
    const Consent consent = state.consent != nullptr ? *state.consent : Consent{};
    const auto window = window_at(state.quantity.window, consent, ledger.season(), as_at);
    if (!window) return {};
    const int member = member_number(state, members);
    auto counts = counts_of(state.quantity, members, *state.condition, ledger);
    std::erase_if(counts, [&](const Count& count) {
        return count.member != member || !window->counts(count.at, as_at);
    });
    if (state.quantity.window.kind == WindowKind::trip) keep_last_trip(counts);
    return counts;
}

}  // namespace

std::vector<EvidenceLine> evidence(const Ledger& ledger, const LimitState& state, Instant as_at) {
    const bool dredged = state.quantity.scope.activity == Activity::dredge;
    const LineFinder finder(dredged ? ledger.dredged() : ledger.released());
    const auto measure = measure_of(state.quantity);
    std::vector<EvidenceLine> lines;
    for (const auto& count : counted(ledger, state, as_at)) {
        const LedgerLine* line = finder.find(count);
        if (line != nullptr && !lines.empty() && lines.back().line == line) {
            lines.back().amount = together(lines.back().amount, count.amount);
            lines.back().unknown = lines.back().unknown || count.unknown;
            continue;
        }
        EvidenceLine found{count.at, line, count.amount, count.unknown, std::nullopt};
        if (line != nullptr && measure) {
            const auto* result = counted_method(*line, state.quantity.method, *measure);
            if (result != nullptr) found.method = result->method;
        }
        lines.push_back(std::move(found));
    }
    return lines;
}

}  // namespace spoilbook
