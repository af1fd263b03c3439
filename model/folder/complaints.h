// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>

#include "model/unit/refusal.h"

namespace spoilbook {

/// Gathers every reason why a folder is refused, and what is only noted. Of one file the first 1 000 are kept
/// and the rest counted, so that a gigabyte of rubbish cannot fill the memory.
class Complaints {
 public:
    static constexpr std::size_t most_of_one_file = 1000;

    /// `file` as it stands in the folder; refusals are counted by it.
    void refuse(const std::string& file, Refusal refusal);
    void note(std::string where, std::string what) { notes_.push_back({std::move(where), std::move(what)}); }

    [[nodiscard]] bool any() const { return !refusals_.empty(); }
    /// All reasons, the ones that were only counted said in a last line of each file.
    [[nodiscard]] Refusals refusals() const;
    [[nodiscard]] const Notes& notes() const { return notes_; }

 private:
    Refusals refusals_;
    Notes notes_;
    std::vector<std::pair<std::string, std::size_t>> count_by_file_;
};

}  // namespace spoilbook
