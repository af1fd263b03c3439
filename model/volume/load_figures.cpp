// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/load_figures.h"

#include <algorithm>

#include "model/volume/draughts.h"
#include "model/volume/stated.h"
#include "model/volume/tally.h"
#include "model/volume/ullage.h"

namespace spoilbook {

const MethodResult* LoadFigures::by(Method method) const {
    const auto found = std::find_if(methods.begin(), methods.end(),
                                    [method](const MethodResult& result) { return result.method == method; });
    return found == methods.end() ? nullptr : &*found;
}

const MethodResult* LoadFigures::counted_by(std::optional<Method> named,
                                            std::optional<Measure> measure) const {
    for (const MethodResult& result : methods) {
        if (named && result.method != *named) continue;
        const bool gives = measure ? result.of(*measure).has_value() : result.hopper_m3 || result.in_situ_m3;
        if (gives) return &result;
    }
    return nullptr;
}

LoadFigures figures(const LoadIndex& index, const Load& load) {
    const LoadReadings readings = read_load(index, load);
    LoadFigures found;
    for (const SplitPart& part : readings.split.parts) {
        std::optional<double> in_situ_share;
        if (part.in_situ_share) in_situ_share = part.in_situ_share->value();
        found.parts.push_back({part.claim, part.material, part.hopper_share.value(), in_situ_share});
    }
    found.methods.reserve(4);
    const auto keep = [&found](std::optional<MethodResult> result) {
        if (result) found.methods.push_back(std::move(*result));
    };
    keep(by_ullage(readings, found.left_out));
    keep(by_draughts(readings, found.left_out));
    keep(by_tally(readings, found.left_out));
    keep(by_statement(readings));
    found.agreements = agreements(found.methods);
    return found;
}

}  // namespace spoilbook
