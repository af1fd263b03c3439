// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/logging/keep_track.h"

namespace spoilbook {

namespace {

bool has_track(const Book& book, const Id& trip) {
    const Kind& track = kind("track");
    const std::size_t of = *track.index_of("trip");
    for (const Row& row : book.rows(track)) {
        const Id* id = std::get_if<Id>(&row.values[of]);
        if (id != nullptr && *id == trip) return true;
    }
    return false;
}

}  // namespace

Checked<bool> keep_track(Change& change, const Trip& trip, const std::string& csv) {
    if (csv.empty() || has_track(change.book(), trip.id)) return false;
    const auto digest = change.keep(csv);
    if (!digest) return digest.refusals();
    const Kind& track = kind("track");
    std::vector<Value> values(track.fields.size());
    values[*track.index_of("trip")] = trip.id;
    values[*track.index_of("file")] = trip.trip + ".csv";
    values[*track.index_of("digest")] = *digest;
    change.insert(track, values);
    return true;
}

}  // namespace spoilbook
