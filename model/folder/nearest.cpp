// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/nearest.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace spoilbook {

namespace {

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t most) {
    // Nobody mistypes a page; and two long texts would take long to compare.
    constexpr std::size_t longest = 100;
    if (a.size() > longest || b.size() > longest) return most + 1;
    const std::size_t gap = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
    if (gap > most) return most + 1;
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        std::size_t least = row[0];
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = small(a[i - 1]) == small(b[j - 1]);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
            const bool swapped =
                i > 1 && j > 1 && small(a[i - 1]) == small(b[j - 2]) && small(a[i - 2]) == small(b[j - 1]);
            if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
            least = std::min(least, row[j]);
        }
        if (least > most) return most + 1;
        before.swap(last);
        last.swap(row);
    }
    return std::min(last[b.size()], most + 1);
}

std::string nearest_name(std::string_view written, const std::vector<std::string>& known) {
    const std::size_t most = std::clamp<std::size_t>(written.size() / 3, 1, 3);
    std::string nearest;
    std::size_t least = most + 1;
    for (const auto& name : known) {
        const std::size_t distance = edit_distance(written, name, most);
        if (distance < least) {
            least = distance;
            nearest = name;
        }
    }
    if (!nearest.empty()) return nearest;
    // What is only cut short or drawn out is near too: "heading" for heading_deg.
    for (const auto& name : known) {
        const bool begins = name.starts_with(written) || written.starts_with(name);
        if (begins && std::min(name.size(), written.size()) >= 3) return name;
    }
    return nearest;
}

std::string did_you_mean(std::string_view written, const std::vector<std::string>& known) {
    const std::string nearest = nearest_name(written, known);
    if (!nearest.empty()) return fmt::format("did you mean {}?", nearest);
    return fmt::format("it may be {}", fmt::join(known, ", "));
}

std::string labels_there_are(std::string_view written, std::vector<std::string> known) {
    constexpr std::size_t most_listed = 8, far = 100;
    if (known.empty()) return "there is none yet: log it first";
    // Cells of several grounds bear one name.
    std::sort(known.begin(), known.end());
    known.erase(std::unique(known.begin(), known.end()), known.end());
    const std::string nearest = nearest_name(written, known);
    if (!nearest.empty() && nearest != written) return fmt::format("did you mean {}?", nearest);
    if (known.size() == 1) return fmt::format("there is {} alone", known.front());
    if (known.size() <= most_listed) return fmt::format("there are {}", fmt::join(known, ", "));
    std::stable_sort(known.begin(), known.end(), [&](const std::string& a, const std::string& b) {
        return edit_distance(written, a, far) < edit_distance(written, b, far);
    });
    const std::size_t more = known.size() - most_listed;
    known.resize(most_listed);
    return fmt::format("there are {} and {} more", fmt::join(known, ", "), more);
}

}  // namespace spoilbook
