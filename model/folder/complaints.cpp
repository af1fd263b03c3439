// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/complaints.h"

#include <fmt/format.h>

#include <algorithm>

namespace spoilbook {

namespace {

/// Faults behind which a whole file, or a list in it, is missing.
bool costs_rows(const std::string& code) {
    static const std::set<std::string> codes{
        "not-utf-8",  "nul-byte",   "line-end",  "empty-file", "quoting", "not-json",     "too-deep",
        "unreadable", "not-a-file", "too-large", "no-harbour", "crs",     "not-a-folder", "wrong-shape"};
    return codes.contains(code);
}

/// Cut between characters, never within one.
void cut(std::string& text) {
    if (text.size() <= Complaints::longest_text) return;
    std::size_t end = Complaints::longest_text;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U)
        --end;
    text.resize(end);
    text += "…";
}

}  // namespace

void Complaints::refuse(const std::string& file, Refusal refusal) {
    const auto of_file = [&](const auto& entry) { return entry.first == file; };
    auto found = std::find_if(count_by_file_.begin(), count_by_file_.end(), of_file);
    if (found == count_by_file_.end()) found = count_by_file_.insert(found, {file, 0});
    if (costs_rows(refusal.code)) lost_rows_.insert(file);
    if (++found->second > most_of_one_file) return;
    for (std::string* text : {&refusal.where, &refusal.what, &refusal.mend})
        cut(*text);
    refusals_.push_back(std::move(refusal));
}

void Complaints::note(std::string where, std::string what) {
    cut(where);
    cut(what);
    notes_.push_back({std::move(where), std::move(what)});
}

std::size_t Complaints::count_of(const std::string& file) const {
    for (const auto& [name, count] : count_by_file_) {
        if (name == file) return count;
    }
    return 0;
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
