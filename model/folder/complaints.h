// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <string>
#include <utility>

#include "model/unit/refusal.h"

namespace spoilbook {

/// Gathers every reason why a folder is refused, and what is only noted. Of one file the first 1 000 are kept
/// and the rest counted, so that a gigabyte of rubbish cannot fill the memory.
class Complaints {
 public:
    static constexpr std::size_t most_of_one_file = 1000;
    /// Longer texts are cut in what is told of them.
    static constexpr std::size_t longest_text = 600;

    /// `file` as it stands in the folder; refusals are counted by it.
    void refuse(const std::string& file, Refusal refusal);
    void note(std::string where, std::string what);
    void lose_rows(const std::string& file) { lost_rows_.insert(file); }

    [[nodiscard]] bool any() const { return !refusals_.empty(); }
    [[nodiscard]] bool any_of(const std::string& file) const { return count_of(file) > 0; }
    /// True where more of this file would only be counted: no need to look for the nearest name.
    [[nodiscard]] bool full(const std::string& file) const { return count_of(file) >= most_of_one_file; }
    /// True where a fault cost this file its rows or their ids: what refers to them cannot be judged.
    [[nodiscard]] bool lost_rows(const std::string& file) const { return lost_rows_.contains(file); }
    /// All reasons, the ones that were only counted said in a last line of each file.
    [[nodiscard]] Refusals refusals() const;
    [[nodiscard]] const Notes& notes() const { return notes_; }

 private:
    [[nodiscard]] std::size_t count_of(const std::string& file) const;

    Refusals refusals_;
    Notes notes_;
    std::vector<std::pair<std::string, std::size_t>> count_by_file_;
    std::set<std::string> lost_rows_;
};

}  // namespace spoilbook
