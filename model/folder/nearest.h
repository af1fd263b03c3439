// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace spoilbook {

/// How many letters must be put in, taken out, changed or swapped with their neighbour to make one text the
/// other (optimal string alignment), capitals counting as small letters; at most `most` + 1, where it stops
/// counting. Texts over 100 bytes count as far apart. Source: Damerau, Commun. ACM 7 (1964) 171, in Wagner
/// and Fischer's tabular form.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t most);

/// The known name nearest to what was written; empty where none is near (a third of its length, 3 at most).
std::string nearest_name(std::string_view written, const std::vector<std::string>& known);

/// "did you mean lat?", or "it may be trip, load, tug" where nothing is near.
std::string did_you_mean(std::string_view written, const std::vector<std::string>& known);

/// The label of each row; `label` is a member of it.
template <class Rows, class Label>
std::vector<std::string> labels_of(const Rows& rows, Label label) {
    std::vector<std::string> labels;
    for (const auto& row : rows)
        labels.push_back(row.*label);
    return labels;
}

/// What a person can write for a label that is none: the nearest, else all there are, else the eight that are
/// nearest and how many more: "did you mean A1?", "there are A1, B2", "there is none yet: log it first".
std::string labels_there_are(std::string_view written, std::vector<std::string> known);

}  // namespace spoilbook
