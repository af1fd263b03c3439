// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/tally.h"

#include "model/volume/assumptions.h"
#include "model/volume/solids.h"

namespace spoilbook {
namespace {

std::string_view missing_in(const TallyLine& line) {
    if (!line.buckets) return obstacle::tally_no_count;
    if (!line.capacity_m3) return obstacle::tally_no_capacity;
    return obstacle::tally_no_fill;
}

}  // namespace

std::optional<MethodResult> by_tally(const LoadReadings& readings, std::vector<LeftOut>& left_out) {
    const LoadSplit& split = readings.split;
    if (split.lines.empty()) return std::nullopt;
    const double left_before_m3 = readings.load->left_before_m3.value_or(0);
    Uncertain hopper = left_before_m3;
    double buckets = 0;
    for (const TallyLine& line : split.lines) {
        const auto heap = line.heap_m3();
        if (!heap) {
            left_out.push_back({Method::tally, missing_in(line)});
            return std::nullopt;
        }
        hopper = hopper + *heap;
        buckets += *line.buckets;
    }
    if (buckets == 0) {
        left_out.push_back({Method::tally, obstacle::tally_nothing});
        return std::nullopt;
    }
    MethodResult result;
    result.method = Method::tally;
    result.facts = {{"buckets", buckets}, {"left_before_m3", left_before_m3}};
    result.assumed.push_back(assumption::counts_exact);
    if (left_before_m3 > 0) result.assumed.push_back(assumption::left_before_as_load);
    HopperContent content;
    content.hopper_m3 = hopper;
    if (split.situ_per_hopper) content.in_situ_m3 = hopper * *split.situ_per_hopper;
    content.top_m3 = top_volume(readings, hopper);
    give_amounts(readings, content, result);
    return result;
}

}  // namespace spoilbook
