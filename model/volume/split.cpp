// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/split.h"

#include <algorithm>

#include "model/volume/assumptions.h"

namespace spoilbook {
namespace {

std::optional<Instant> factors_at(const Load& load) {
    return load.loading_end ? load.loading_end : load.loading_start;
}

TallyLine look_up(const LoadIndex& index, const Load& load, const Tally& tally) {
    const Season& season = index.season();
    TallyLine line;
    const Claim* claim = nullptr;
    if (const Station* station = season.stations.find(tally.station)) {
        line.claim = station->claim;
        claim = season.claims.find(station->claim);
    }
    line.material = tally.material ? tally.material : load.material;
    if (!line.material && claim != nullptr) line.material = claim->material;
    if (tally.count || tally.part_buckets)
        line.buckets = tally.count.value_or(0) + tally.part_buckets.value_or(0);
    if (const Bucket* bucket = season.buckets.find(tally.bucket)) line.capacity_m3 = bucket->capacity_m3;
    line.factors = index.factors().factors_for(line.material, tally.bucket, factors_at(load));
    return line;
}

bool same_make(const TallyLine& a, const TallyLine& b) {
    return a.claim == b.claim && a.material == b.material;
}

/// Weights of the lines that brought something, or nothing where one cannot be worked out or all are zero.
template <class WeightOf>
std::optional<std::vector<SplitPart>> parts_by(const std::vector<TallyLine>& lines, WeightOf weight_of) {
    std::vector<SplitPart> parts;
    Uncertain whole;
    for (const TallyLine& line : lines) {
        const std::optional<Uncertain> weight = weight_of(line);
        if (!weight) return std::nullopt;
        if (weight->value() == 0) continue;
        whole = whole + *weight;
        const auto part = std::find_if(parts.begin(), parts.end(), [&line](const SplitPart& p) {
            return p.claim == line.claim && p.material == line.material;
        });
        if (part != parts.end()) {
            part->hopper_share = part->hopper_share + *weight;
        } else {
            parts.push_back({line.claim, line.material, line.factors, *weight, {}});
        }
    }
    if (parts.empty()) return std::nullopt;
    for (SplitPart& part : parts)
        part.hopper_share = part.hopper_share / whole;
    return parts;
}

void divide(LoadSplit& split, const SplitPart& undivided) {
    const auto& lines = split.lines;
    // Lines that counted nothing brought nothing: they do not make a load a mixed one.
    const auto first =
        std::find_if(lines.begin(), lines.end(), [](const TallyLine& l) { return l.buckets != 0.0; });
    if (first == lines.end()) {
        const bool alike = std::all_of(lines.begin(), lines.end(),
                                       [&lines](const TallyLine& l) { return same_make(l, lines.front()); });
        if (!lines.empty())
            split.assumed.push_back(alike ? assumption::no_bucket_counted : assumption::not_split);
        const bool take_claim = !lines.empty() && alike;
        split.parts = {take_claim ? SplitPart{lines[0].claim, lines[0].material, lines[0].factors, 1, 1}
                                  : undivided};
        return;
    }
    const bool alike = std::all_of(first, lines.end(), [&first](const TallyLine& l) {
        return l.buckets == 0.0 || same_make(l, *first);
    });
    if (alike) {
        split.parts = {SplitPart{first->claim, first->material, first->factors, 1, 1}};
        return;
    }
    if (auto parts = parts_by(lines, [](const TallyLine& line) { return line.heap_m3(); })) {
        split.parts = std::move(*parts);
        split.by_heap = true;
        return;
    }
    const auto counts = [](const TallyLine& line) {
        return line.buckets ? std::optional<Uncertain>(*line.buckets) : std::nullopt;
    };
    if (auto parts = parts_by(lines, counts)) {
        split.parts = std::move(*parts);
        split.assumed.push_back(assumption::split_by_count);
        return;
    }
    split.parts = {undivided};
    split.assumed.push_back(assumption::not_split);
}

/// In-situ shares ∝ w/B. One material has one B, which then has no say in the shares.
void work_out_in_situ(LoadSplit& split) {
    auto& parts = split.parts;
    std::vector<Uncertain> over_b;
    Uncertain whole;
    for (const SplitPart& part : parts) {
        if (part.factors.bulking == nullptr) break;
        over_b.push_back(part.hopper_share / uncertain(*part.factors.bulking));
        whole = whole + over_b.back();
    }
    const bool known = over_b.size() == parts.size();
    if (known) split.situ_per_hopper = whole;
    const bool one_material = std::all_of(parts.begin(), parts.end(), [&parts](const SplitPart& p) {
        return p.material == parts.front().material;
    });
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (one_material) {
            parts[i].in_situ_share = parts[i].hopper_share;
        } else {
            parts[i].in_situ_share = known ? std::optional(over_b[i] / whole) : std::nullopt;
        }
    }
}

}  // namespace

Uncertain uncertain(const FactorVersion& version) {
    return Uncertain::shared(version.value, version.u, version.source);
}

std::optional<Uncertain> TallyLine::heap_m3() const {
    if (buckets == 0.0) return Uncertain(0);
    if (!buckets || !capacity_m3 || factors.fill == nullptr) return std::nullopt;
    return uncertain(*factors.fill) * (*buckets * *capacity_m3);
}

LoadSplit split_load(const LoadIndex& index, const Load& load) {
    LoadSplit split;
    const auto tallies = index.tallies_of(load.id);
    split.lines.reserve(tallies.size());
    for (const Tally* tally : tallies)
        split.lines.push_back(look_up(index, load, *tally));
    const FactorSet of_load = index.factors().factors_for(load.material, Id{}, factors_at(load));
    divide(split, SplitPart{Id{}, load.material, of_load, 1, 1});
    work_out_in_situ(split);
    return split;
}

}  // namespace spoilbook
