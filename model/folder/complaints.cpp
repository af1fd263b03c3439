// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/complaints.h"

#include <fmt/format.h>

#include <algorithm>

namespace spoilbook {

void Complaints::refuse(const std::string& file, Refusal refusal) {
    const auto of_file = [&](const auto& entry) { return entry.first == file; };
    auto found = std::find_if(count_by_file_.begin(), count_by_file_.end(), of_file);
    if (found == count_by_file_.end()) found = count_by_file_.insert(found, {file, 0});
    if (++found->second <= most_of_one_file) refusals_.push_back(std::move(refusal));
}

Refusals Complaints::refusals() const {
    Refusals all = refusals_;
    for (const auto& [file, count] : count_by_file_) {
        if (count <= most_of_one_file) continue;
        all.push_back({"more-refusals", file, fmt::format("{} more are wrong here", count - most_of_one_file),
                       "mend the first and read the folder again"});
    }
    return all;
}

}  // namespace spoilbook
