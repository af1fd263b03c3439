// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

/// The sentences of MethodResult::assumed and LeftOut::why: each names what a load's records do not say.
namespace spoilbook::assumption {

using Sentence = std::string_view;

// The split over claims and materials.
inline constexpr Sentence split_by_count =
    "shares by plain bucket counts: a capacity or fill factor of a tally line is not recorded";
inline constexpr Sentence not_split =
    "not split over claims: a tally line has no count, and its lines differ in claim or material";
inline constexpr Sentence no_bucket_counted = "its tally lines count no bucket: their first claim takes all";
inline constexpr Sentence left_before_as_load =
    "what was left in the hopper before is taken as spoil of this load's make-up";
inline constexpr Sentence stated_split_by_heap =
    "the stated in-situ volume is split by buckets: a bulking factor is not recorded";

// Uncertainty.
inline constexpr Sentence factor_exact =
    "a bulking or fill factor without a recorded uncertainty is taken as exact";
inline constexpr Sentence counts_exact = "bucket counts and bucket capacities are taken as exact";
inline constexpr Sentence stated_exact = "the stated volume is taken as exact";
inline constexpr Sentence one_dip = "one dip: its scatter over the hopper is not known and taken as none";
inline constexpr Sentence ullage_exact =
    "the barge's ullage reading uncertainty is not recorded and taken as none";
inline constexpr Sentence draughts_exact =
    "the barge's draught reading uncertainty is not recorded and taken as none";
inline constexpr Sentence hydrostatic_exact = "the hydrostatic table is taken as exact";

// Weights.
inline constexpr Sentence no_density =
    "no wet or dry tonnes: an in-place or grain density is not recorded, or not above the water's";
inline constexpr Sentence no_bulking = "no in-situ volume: a bulking factor is not recorded";
inline constexpr Sentence top_outside =
    "the surface of the water on the spoil is outside the ullage table: what hangs on it is left out";
inline constexpr Sentence top_unread =
    "water on the spoil is logged by its depth alone, without dips: taken as none";

// Draughts.
inline constexpr Sentence no_top = "wet tonnes only: no dips say how high the hopper was full";
inline constexpr Sentence lighter_than_water =
    "wet tonnes only: the load weighs less than water of its volume up to the top";
inline constexpr Sentence hopper_from_bulking =
    "hopper volume from the in-situ volume and the bulking factor: there are no dips to the spoil";
inline constexpr Sentence marks_at_ends =
    "draught marks are taken as standing at the perpendiculars and amidships";
inline constexpr Sentence four_marks =
    "four marks: midships is taken as the mean of fore and aft, so without hog or sag";
inline constexpr Sentence no_trim_correction =
    "trim corrections taken as none: the table gives no LCF and TPC, or the length is not recorded";
inline constexpr Sentence no_second_trim_correction =
    "second trim correction taken as none: the table gives no MCTC half a metre above and below";
inline constexpr Sentence no_list_correction =
    "list correction taken as none: the table gives no TPC at both midships draughts";
inline constexpr Sentence density_not_read =
    "water density not read with the draughts: taken as the density of the hydrostatic table";
inline constexpr Sentence no_hopper_water =
    "water in the empty hopper is not recorded with the light draughts: taken as none";
inline constexpr Sentence no_changes =
    "changes of fuel, ballast and stores since the light draughts are not recorded: taken as none";

}  // namespace spoilbook::assumption

/// Why a method whose readings are there gives nothing.
namespace spoilbook::obstacle {

using Sentence = std::string_view;

inline constexpr Sentence no_ullage_table = "the barge has no ullage table";
inline constexpr Sentence dips_outside = "the mean dip is outside the barge's ullage table";
inline constexpr Sentence tally_no_count = "a tally line has no count";
inline constexpr Sentence tally_no_capacity = "the capacity of a bucket is not recorded";
inline constexpr Sentence tally_no_fill = "a fill factor is not recorded";
inline constexpr Sentence tally_nothing = "its tally lines count no bucket";
inline constexpr Sentence no_full_draughts = "there are light draughts but none of the loaded barge";
inline constexpr Sentence no_light_draughts =
    "there are draughts of the loaded barge but none of her light at or before loading";
inline constexpr Sentence marks_missing = "draughts are four or six marks: FP FS MP MS AP AS or FP FS AP AS";
inline constexpr Sentence no_hydrostatic_table = "the barge has no hydrostatic table";
inline constexpr Sentence draught_outside = "a mean draught is outside the barge's hydrostatic table";
inline constexpr Sentence light_heavier = "light she is heavier than loaded";

}  // namespace spoilbook::obstacle
