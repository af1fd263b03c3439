// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/command/command.h"
#include "model/answer/place_findings.h"
#include "model/answer/release_places.h"

namespace spoilbook {

/// The tracks of what is read, their files out of the book's own file: a copy as of --known-at has none.
/// Every reader that is made has a connection of its own.
TripTracks tracks_of(const Reading& reading, const Options& options);

/// What every condition of kind place in force says of the release, worst last.
nlohmann::ordered_json findings_json(const std::vector<PlaceFinding>& findings);

}  // namespace spoilbook
