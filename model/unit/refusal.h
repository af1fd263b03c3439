// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace spoilbook {

/// A rule that a person's input broke: a value, never an exception.
/// `code` is stable and listed in docs/errors.md; the three sentences are for people.
struct Refusal {
    std::string code;   ///< e.g. "unknown-column"
    std::string where;  ///< file, line, column or path: "trips.csv line 4 column lat"
    std::string what;   ///< what is wrong, with the value as given
    std::string mend;   ///< what would be right

    bool operator==(const Refusal&) const = default;
};

using Refusals = std::vector<Refusal>;

/// An odd row that is kept: one line on standard error, never a change of exit status.
struct Note {
    std::string where;
    std::string what;

    bool operator==(const Note&) const = default;
};

using Notes = std::vector<Note>;

/// "where: what; mend" on one line.
std::string one_line(const Refusal& refusal);
std::string one_line(const Note& note);

}  // namespace spoilbook
