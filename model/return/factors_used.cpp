// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/factors_used.h"

#include <algorithm>
#include <map>

#include "model/consent/as_reported.h"

namespace spoilbook {

namespace {

std::vector<Id> buckets_of(const Season& season) {
    std::vector<Id> buckets{Id{}};
    for (const auto& bucket : season.buckets.rows())
        buckets.push_back(bucket.id);
    return buckets;
}

/// Finds the versions behind sources: all that were in force for any material and bucket at a load's time.
class VersionFinder {
 public:
    VersionFinder(const Ledger& ledger, const Season* reported)
        : ledger_(ledger), reported_(reported), buckets_(buckets_of(ledger.season())) {}

    void add(const Load& load, const std::vector<SourceId>& sources) {
        const auto at = load.loading_end ? load.loading_end : load.loading_start;
        for (const auto& material : ledger_.season().materials.rows()) {
            for (const auto& bucket : buckets_) {
                const auto set = ledger_.loads().factors().factors_for(material.id, bucket, at);
                for (const auto* version : {set.bulking, set.fill, set.situ_density, set.grain_density}) {
                    const bool used = version != nullptr && std::find(sources.begin(), sources.end(),
                                                                      version->source) != sources.end();
                    if (used) add_version(material, *version);
                }
            }
        }
    }

    [[nodiscard]] std::vector<FactorUsed> list() const {
        std::vector<FactorUsed> list;
        for (const auto& [name, used] : found_)
            list.push_back(used);
        return list;
    }

 private:
    void add_version(const Material& material, const FactorVersion& version) {
        const std::string name = ledger_.sources().name(version.source);
        found_.try_emplace(name, FactorUsed{name, version.value, version.u, version.from, version.accepted,
                                            waits(material, version)});
    }

    [[nodiscard]] bool waits(const Material& material, const FactorVersion& version) const {
        if (reported_ == nullptr || !version.revised) return false;
        const auto& rows = ledger_.season().factors.rows();
        return std::any_of(rows.begin(), rows.end(), [&](const Factor& row) {
            return row.material == material.id && row.from == version.from && row.value == version.value &&
                   reported_->factors.find(row.id) == nullptr;
        });
    }

    const Ledger& ledger_;
    const Season* reported_;
    std::vector<Id> buckets_;
    std::map<std::string, FactorUsed> found_;
};

}  // namespace

std::vector<FactorUsed> factors_used(const Ledger& ledger, const std::vector<ScheduleLine>& schedule,
                                     Instant as_at) {
    const auto reported = season_as_reported(ledger.season(), as_at);
    VersionFinder finder(ledger, reported ? &*reported : nullptr);
    for (const auto& line : schedule) {
        const Load* load = line.release->load;
        const auto* figures = load != nullptr ? ledger.figures_of(load->id) : nullptr;
        const auto* counted = figures != nullptr ? figures->counted_by() : nullptr;
        if (counted != nullptr) finder.add(*load, counted->versions);
    }
    return finder.list();
}

std::optional<Amounts> reported_amounts(const Ledger& ledger, const Period& period, Instant as_at) {
    const auto season = season_as_reported(ledger.season(), as_at);
    if (!season) return std::nullopt;
    const Ledger reported(*season);
    return volumes(reported, as_at, {}, period).front().amounts;
}

}  // namespace spoilbook
