// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/solids.h"

#include <algorithm>

#include "model/volume/assumptions.h"

namespace spoilbook {
namespace {

using Maybe = std::optional<Uncertain>;

/// One measure of each part. Whole where every part has it.
struct Column {
    std::vector<Uncertain> parts;
    bool whole = true;

    void add(const Maybe& amount) {
        whole = whole && amount.has_value();
        if (whole) parts.push_back(*amount);
    }
    [[nodiscard]] std::optional<Estimate> part(std::size_t i) const {
        return whole ? std::optional(parts[i].estimate()) : std::nullopt;
    }
    [[nodiscard]] std::optional<Estimate> sum() const {
        if (!whole) return std::nullopt;
        Uncertain all;
        for (const Uncertain& part : parts)
            all = all + part;
        return all.estimate();
    }
};

Maybe times(const Maybe& a, const Maybe& b) {
    return a && b ? Maybe(*a * *b) : std::nullopt;
}

/// The part's share of the in-situ volume. One stated in situ is split like the heap where no B is known.
Maybe in_situ_of(const SplitPart& part, const Maybe& whole, MethodResult& result) {
    if (!whole || part.in_situ_share) return times(whole, part.in_situ_share);
    if (std::find(result.assumed.begin(), result.assumed.end(), assumption::stated_split_by_heap) ==
        result.assumed.end()) {
        result.assumed.push_back(assumption::stated_split_by_heap);
    }
    return times(whole, part.hopper_share);
}

Maybe wet_of(const SplitPart& part, const HopperContent& content, const Maybe& in_situ, double water) {
    const Maybe over = above_water(part.factors.situ_density, water);
    if (content.wet_t && (!in_situ || !over)) return *content.wet_t * part.hopper_share;
    if (!in_situ || !over || !content.top_m3) return std::nullopt;
    return *in_situ * *over + *content.top_m3 * part.hopper_share * water;
}

Maybe dry_of(const SplitPart& part, const HopperContent& content, const Maybe& in_situ, double water) {
    const Maybe grain_over = above_water(part.factors.grain_density, water);
    if (!grain_over) return std::nullopt;
    const Uncertain grain = uncertain(*part.factors.grain_density);
    if (const Maybe over = above_water(part.factors.situ_density, water); over && in_situ) {
        return *in_situ * *over * (grain / *grain_over);
    }
    // Weighed: the weight under water is the solids', whatever they weighed in place.
    if (!content.wet_t || !content.top_m3 || part.hopper_share.value() != 1) return std::nullopt;
    return (*content.wet_t - *content.top_m3 * water) * (grain / *grain_over);
}

std::optional<Estimate> estimate(const Maybe& amount) {
    return amount ? std::optional(amount->estimate()) : std::nullopt;
}

/// Less what was left in the hopper before: of the same make-up, so in place by the same Σ w/B.
Amounts dredged_of(const LoadReadings& readings, const HopperContent& content, const SplitPart& part,
                   const Maybe& situ, const Maybe& wet, const Maybe& dry) {
    const double left = *readings.load->left_before_m3;
    Amounts dredged;
    if (content.hopper_m3) dredged.hopper_m3 = ((*content.hopper_m3 - left) * part.hopper_share).estimate();
    const Maybe& per_hopper = readings.split.situ_per_hopper;
    if (!per_hopper || !content.in_situ_m3 || content.in_situ_m3->value() <= 0) return dredged;
    const Maybe fresh = Uncertain(1) - *per_hopper * left / *content.in_situ_m3;
    dredged.in_situ_m3 = estimate(times(situ, fresh));
    dredged.wet_t = estimate(times(wet, fresh));
    dredged.dry_t = estimate(times(dry, fresh));
    return dredged;
}

void name_versions(const LoadReadings& readings, const HopperContent& content, MethodResult& result) {
    bool exact = false;
    if (readings.split.by_heap || result.method == Method::tally) {
        for (const TallyLine& line : readings.split.lines) {
            if (line.buckets == 0.0) continue;
            use_version(line.factors.fill, result);
            exact = exact || (line.factors.fill != nullptr && line.factors.fill->u == 0);
        }
    }
    for (const SplitPart& part : readings.split.parts) {
        use_version(part.factors.bulking, result);
        exact = exact || (part.factors.bulking != nullptr && part.factors.bulking->u == 0);
        if (!result.wet_t && !result.dry_t) continue;
        use_version(part.factors.situ_density, result);
        if (result.dry_t) use_version(part.factors.grain_density, result);
    }
    if (exact) result.assumed.push_back(assumption::factor_exact);
    if (!content.in_situ_m3 && !content.wet_t) result.assumed.push_back(assumption::no_bulking);
    if (content.in_situ_m3 && content.top_m3 && (!result.wet_t || !result.dry_t)) {
        result.assumed.push_back(assumption::no_density);
    }
}

}  // namespace

Maybe above_water(const FactorVersion* density, double water_t_m3) {
    if (density == nullptr || density->value <= water_t_m3) return std::nullopt;
    return uncertain(*density) - water_t_m3;
}

void use_version(const FactorVersion* version, MethodResult& result) {
    if (version == nullptr) return;
    auto& used = result.versions;
    if (std::find(used.begin(), used.end(), version->source) == used.end()) used.push_back(version->source);
}

Maybe top_volume(const LoadReadings& readings, const Maybe& hopper_m3) {
    const TopSurface& top = readings.top;
    if (top.outside_table) return std::nullopt;
    if (!top.volume_m3) return hopper_m3;
    if (!hopper_m3) return top.volume_m3;
    if (const Maybe& spoil = readings.hopper_by_dips_m3) {
        const Uncertain water = *top.volume_m3 - *spoil;
        return water.value() > 0 ? *hopper_m3 + water : *hopper_m3;
    }
    return hopper_m3->value() > top.volume_m3->value() ? *hopper_m3 : *top.volume_m3;
}

void give_amounts(const LoadReadings& readings, const HopperContent& content, MethodResult& result) {
    const auto& parts = readings.split.parts;
    const double water = readings.water_t_m3();
    Column hopper, in_situ, wet, dry;
    const bool some_left = readings.load->left_before_m3.value_or(0) > 0;
    for (const SplitPart& part : parts) {
        const Maybe situ = in_situ_of(part, content.in_situ_m3, result);
        const Maybe wet_part = wet_of(part, content, situ, water);
        const Maybe dry_part = dry_of(part, content, situ, water);
        hopper.add(times(content.hopper_m3, part.hopper_share));
        in_situ.add(situ);
        wet.add(wet_part);
        dry.add(dry_part);
        if (!some_left) continue;
        result.dredged_by_part.push_back(dredged_of(readings, content, part, situ, wet_part, dry_part));
    }
    static_cast<Amounts&>(result) = {hopper.sum(), in_situ.sum(), wet.sum(), dry.sum()};
    if (parts.size() > 1) {
        for (std::size_t i = 0; i < parts.size(); ++i)
            result.by_part.push_back({hopper.part(i), in_situ.part(i), wet.part(i), dry.part(i)});
    }
    if (readings.top.outside_table) result.assumed.push_back(assumption::top_outside);
    if (readings.top.depth_alone) result.assumed.push_back(assumption::top_unread);
    result.assumed.insert(result.assumed.end(), readings.split.assumed.begin(), readings.split.assumed.end());
    name_versions(readings, content, result);
}

}  // namespace spoilbook
