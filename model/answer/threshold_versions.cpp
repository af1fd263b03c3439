// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/threshold_versions.h"

#include "model/answer/checked_site.h"
#include "model/record/watched_water.h"

namespace spoilbook {

std::vector<ThresholdVersion> threshold_versions(const Book& book, Instant as_at) {
    std::vector<ThresholdVersion> versions;
    for (const Row& row : book.rows(definition<Site>().kind())) {
        const auto site = definition<Site>().read(row);
        std::vector<std::string> labels{""};
        for (const Row& check : book.rows(definition<SiteCheck>().kind())) {
            const auto said = definition<SiteCheck>().read(check);
            if (said.site == site.id)
                labels.push_back(book.label_of(definition<SiteCheck>().kind(), check.id));
        }
        const auto spans = thresholds_of(book, site);
        std::size_t holds = spans.size();
        for (std::size_t i = 0; i < spans.size(); ++i) {
            if (spans[i].from <= as_at && as_at < spans[i].to) holds = i;
        }
        for (std::size_t i = 0; i < spans.size(); ++i)
            versions.push_back({site.site, site.unit, labels.at(i), spans[i], i == holds});
    }
    return versions;
}

}  // namespace spoilbook
