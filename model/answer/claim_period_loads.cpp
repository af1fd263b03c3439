// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/claim_period_loads.h"

#include <map>

namespace spoilbook {

namespace {

/// One load's contribution to one span.
struct Piece {
    std::size_t span = 0;
    bool known = true;
    std::optional<Estimate> in_situ, hopper, weighed;
    std::map<Id, Estimate> bulked;
};

void put(std::optional<Estimate>& sum, const Estimate& amount) {
    sum = sum ? together(*sum, amount) : amount;
}

/// What of the load does not hang on its bulking factors.
bool is_weighed(const MethodResult& result, const Load& load) {
    return result.method == Method::draughts ||
           (result.method == Method::stated && load.stated_in_situ_m3.has_value());
}

void add_part(const MethodResult* result, const LedgerLine& line, std::size_t i, Piece& piece) {
    const Amounts* amounts = result == nullptr ? nullptr : &result->dredged(i);
    const Id& material = line.figures->parts[i].material;
    if (amounts == nullptr || !amounts->in_situ_m3) {
        piece.known = false;
        return;
    }
    put(piece.in_situ, *amounts->in_situ_m3);
    if (amounts->hopper_m3) put(piece.hopper, *amounts->hopper_m3);
    if (is_weighed(*result, *line.load)) {
        put(piece.weighed, *amounts->in_situ_m3);
    } else if (material && amounts->hopper_m3) {
        const auto [place, fresh] = piece.bulked.try_emplace(material, *amounts->hopper_m3);
        if (!fresh) place->second = together(place->second, *amounts->hopper_m3);
    } else {
        piece.known = false;
    }
}

struct Sums {
    std::size_t loads = 0, unknown = 0;
    Total in_situ, hopper, weighed;
    std::map<Id, Total> bulked;
};

/// The load's random part becomes a source of its own.
Estimate with_own_source(Estimate amount, SourceId own) {
    if (amount.u_random > 0) amount.add_shared(own, amount.u_random);
    amount.u_random = 0;
    return amount;
}

void add_up(const std::vector<Piece>& pieces, SourceId own, std::vector<Sums>& sums) {
    std::size_t cells = 0;
    for (const auto& piece : pieces)
        cells += piece.bulked.size() + (piece.weighed ? 1 : 0);
    const auto share = [&](const Estimate& amount) {
        return cells > 1 ? with_own_source(amount, own) : amount;
    };
    for (const auto& piece : pieces) {
        Sums& sum = sums[piece.span];
        ++sum.loads;
        if (!piece.known) ++sum.unknown;
        if (piece.in_situ) sum.in_situ.add(*piece.in_situ);
        if (piece.hopper) sum.hopper.add(*piece.hopper);
        if (piece.weighed) sum.weighed.add(share(*piece.weighed));
        for (const auto& [material, hopper] : piece.bulked)
            sum.bulked[material].add(share(hopper));
    }
}

SpanLoads made(const Sums& sums) {
    SpanLoads loads{sums.loads,
                    sums.unknown,
                    sums.in_situ.estimate(),
                    sums.hopper.estimate(),
                    sums.weighed.estimate(),
                    {},
                    {}};
    for (const auto& [material, hopper] : sums.bulked) {
        loads.materials.push_back(material);
        loads.bulked_m3.push_back(hopper.estimate());
    }
    return loads;
}

/// The spans by claim, and what of a load falls into which.
class SpanFinder {
 public:
    explicit SpanFinder(std::span<const ClaimSpan> spans) : spans_(spans) {
        for (std::size_t k = 0; k < spans.size(); ++k)
            of_claim_[spans[k].claim].push_back(k);
    }

    [[nodiscard]] std::vector<Piece> pieces_of(const LedgerLine& line) const {
        const auto* result = counted_method(line, "", Measure::in_situ_m3);
        std::vector<Piece> pieces;
        for (std::size_t i = 0; i < line.figures->parts.size(); ++i) {
            const auto found = of_claim_.find(line.figures->parts[i].claim);
            if (found == of_claim_.end()) continue;
            for (const std::size_t k : found->second) {
                if (line.at >= spans_[k].from && line.at < spans_[k].to)
                    add_part(result, line, i, piece_of(pieces, k));
            }
        }
        return pieces;
    }

 private:
    static Piece& piece_of(std::vector<Piece>& pieces, std::size_t span) {
        const auto place = std::find_if(pieces.begin(), pieces.end(),
                                        [span](const Piece& piece) { return piece.span == span; });
        Piece& piece = place != pieces.end() ? *place : pieces.emplace_back();
        piece.span = span;
        return piece;
    }

    std::span<const ClaimSpan> spans_;
    std::unordered_map<Id, std::vector<std::size_t>> of_claim_;
};

}  // namespace

std::vector<SpanLoads> loads_of(const Ledger& ledger, std::span<const ClaimSpan> spans, Instant as_at) {
    const SpanFinder finder(spans);
    std::vector<Sums> sums(spans.size());
    auto own = static_cast<SourceId>(ledger.sources().size());
    for (const auto& line : ledger.dredged()) {
        if (line.at > as_at) break;
        const auto pieces = finder.pieces_of(line);
        add_up(pieces, own, sums);
        if (!pieces.empty()) ++own;
    }
    std::vector<SpanLoads> loads;
    loads.reserve(sums.size());
    for (const auto& sum : sums)
        loads.push_back(made(sum));
    return loads;
}

}  // namespace spoilbook
