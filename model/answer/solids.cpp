// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/solids.h"

#include <algorithm>

#include "model/record/watched_water.h"

namespace spoilbook {

namespace {

std::optional<Site> site_named(const Book& book, const std::string& name) {
    for (const Row& row : book.rows(definition<Site>().kind())) {
        auto site = definition<Site>().read(row);
        if (site.site == name) return site;
    }
    return std::nullopt;
}

std::string left_out(const WaterSample& sample) {
    if (!sample.turbidity) return "no turbidity is recorded";
    if (!sample.solids_mg_l) return "no solids are recorded";
    if (!(*sample.turbidity > 0) || !(*sample.solids_mg_l > 0))
        return "a value is not over 0: it has no logarithm";
    return "";
}

}  // namespace

std::size_t SiteSolids::used() const {
    return static_cast<std::size_t>(std::count_if(
        points.begin(), points.end(), [](const SolidsPoint& point) { return point.left_out.empty(); }));
}

Checked<SiteSolids> site_solids(const Book& book, const std::string& site, Instant as_at) {
    const auto found = site_named(book, site);
    if (!found) return Refusal{"no-such-row", "site " + site, "there is no such site", "look its name up"};
    SiteSolids solids;
    solids.site = found->site;
    solids.unit = found->unit;
    for (const Row& row : book.rows(definition<WaterSample>().kind())) {
        auto sample = definition<WaterSample>().read(row);
        if (sample.site != found->id || (sample.time && as_at < *sample.time)) continue;
        auto why = left_out(sample);
        solids.points.push_back({std::move(sample), std::move(why)});
    }
    std::stable_sort(solids.points.begin(), solids.points.end(),
                     [](const auto& a, const auto& b) { return a.sample.time < b.sample.time; });
    std::vector<SolidsPair> pairs;
    for (const auto& point : solids.points) {
        if (point.left_out.empty()) pairs.push_back({*point.sample.turbidity, *point.sample.solids_mg_l});
    }
    auto line = solids_regression(pairs);
    if (line)
        solids.line = *line;
    else
        solids.why = line.refusals().front().what;
    return solids;
}

}  // namespace spoilbook
