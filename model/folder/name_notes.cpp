// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <map>
#include <set>

#include "model/folder/nearest.h"
#include "model/folder/season_view.h"

namespace spoilbook {

namespace {

/// A name, the first place where it stands and how often.
using Strangers = std::map<std::string, std::pair<std::string, std::size_t>>;

template <class R>
void gather(const Sight<R>& sight, std::string R::*name, const std::set<std::string>& known,
            Strangers& strangers) {
    for (const Seen<R>& seen : sight.all()) {
        const std::string& text = seen.record.*name;
        if (!seen.fresh() || text.empty() || known.contains(text)) continue;
        auto& [place, count] = strangers[text];
        if (count++ == 0) place = sight.place(seen);
    }
}

}  // namespace

void note_names(const MatchBoard& board, const SeasonView& season, NoteDown& notes) {
    std::set<std::string> known;
    const Sight<Person> people(board);
    for (const auto& seen : people.all())
        known.insert(seen.record.name);
    if (known.empty()) return;
    Strangers strangers;
    gather(season.shifts, &Shift::skipper, known, strangers);
    gather(season.shifts, &Shift::signed_by, known, strangers);
    gather(season.trips, &Trip::tug_master, known, strangers);
    const std::vector<std::string> names(known.begin(), known.end());
    for (const auto& [name, found] : strangers) {
        const std::string nearest = nearest_name(name, names);
        notes.push_back(
            {found.first, fmt::format("{} is not in people.csv{}{}", name,
                                      found.second > 1 ? fmt::format(", {} times", found.second) : "",
                                      nearest.empty() ? "" : fmt::format(" (did you mean {}?)", nearest))});
    }
}

}  // namespace spoilbook
