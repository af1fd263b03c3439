// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/place/track.h"
#include "model/record/release_view.h"

namespace spoilbook {

/// Two fixes farther apart than this tell no place between them, where a condition names no interval, s. A
/// tug makes some 250 m in it. Common practice, no source.
inline constexpr double usual_track_gap_s = 60;

/// With the receiver on the tug and the barge astern of her, the hopper is not where the receiver is.
bool towed_behind_receiver(const Trip& trip);

/// Where the hopper was at an instant, by the trip's track: at the receiver, or one line-length back on the
/// track where the barge was towed behind it. Refused as place_on_track and hopper_astern are, and where the
/// line's length is not recorded.
Checked<HopperPlace> hopper_on_track(const Trip& trip, std::span<const Fix> track, Instant at,
                                     double receiver_u_m, double longest_gap_s);

/// The hopper's way while the doors stood open: where they opened, at each fix, and where they were shut (or
/// the hopper was empty, where no shutting is recorded). Refused where one of the two times is blank, and
/// where any place on it is.
Checked<std::vector<EastNorth>> hopper_way(const ReleaseView& release, std::span<const Fix> track,
                                           double longest_gap_s);

}  // namespace spoilbook
