// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/counted_loads.h"

namespace spoilbook {

namespace {

constexpr std::array all_measures{Measure::hopper_m3, Measure::in_situ_m3, Measure::wet_t, Measure::dry_t};

}  // namespace

CountedLoads::CountedLoads(std::span<const LoadFigures> figures) {
    std::size_t parts = 0;
    for (const auto& load : figures)
        parts += load.parts.size();
    parts_.reserve(parts);  // never moved from here on: the loads point to them
    loads_.reserve(figures.size());
    for (const auto& load : figures) {
        CountedLoad& counted = loads_.emplace_back();
        const std::size_t first = parts_.size();
        for (const auto& part : load.parts)
            parts_.push_back({part.claim, part.material, {}});
        for (const Measure measure : all_measures) {
            const MethodResult* result = load.counted_by(std::nullopt, measure);
            if (result == nullptr) continue;
            counted.whole.put(measure, result->of(measure));
            for (std::size_t i = 0; i < load.parts.size(); ++i)
                parts_[first + i].amounts.put(measure, result->part(i).of(measure));
        }
        counted.parts = std::span(parts_).subspan(first);
    }
}

}  // namespace spoilbook
