// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "model/record/plant.h"
#include "model/volume/load_index.h"
#include "model/volume/uncertain.h"

namespace spoilbook {

/// Means of port and starboard, m.
struct MarkMeans {
    double fore = 0;
    double mid = 0;
    double aft = 0;
    std::optional<double> mid_port, mid_starboard;  ///< blank for four marks, whose mid is (fore + aft)/2

    [[nodiscard]] double trim_by_stern_m() const { return aft - fore; }
};

/// From FP FS MP MS AP AS or FP FS AP AS; nothing for any other number of marks.
std::optional<MarkMeans> mark_means(const std::vector<double>& marks_m);

/// Mean of means: (F + A + 6 M)/8 for ship-shaped hulls; divisor 6 gives (F + A + 4 M)/6, Simpson's rule on
/// the rectangular waterplane of a box hull.
double mean_draught_m(const MarkMeans& means, std::int64_t divisor);

/// t, signed: −trim · LCF · TPC / LBP with the trim by the stern in cm and LCF forward of midships in m:
/// added where the centre of flotation lies towards the deeper end.
double first_trim_correction_t(double trim_by_stern_m, double lcf_forward_m, double tpc_t_per_cm,
                               double lbp_m);
/// t: 50 · trim² · (dMCTC/dz) / LBP (Nemoto), dMCTC/dz the change of MCTC, t·m/cm, over the metre about the
/// mean draught.
double second_trim_correction_t(double trim_m, double mctc_change_per_m, double lbp_m);
/// t: 6 · (d₁ − d₂) · (TPC₁ − TPC₂), midships draughts to port and starboard in m.
double list_correction_t(double port_m, double starboard_m, double tpc_port, double tpc_starboard);

/// What a hull weighs at one reading of her draughts.
struct Displacement {
    Uncertain weight_t;
    double mean_draught_m = 0;
    double trim_by_stern_m = 0;
    double first_trim_t = 0, second_trim_t = 0, list_t = 0;  ///< before the density correction
    std::vector<std::string_view> assumed;
};

/// The draughts of one reading. `density_t_m3` blank: the table's own.
struct DraughtReading {
    MarkMeans means;
    std::optional<double> density_t_m3;
};

/// Table → trim 1 → trim 2 → list → density, in this order. `mean_u` is a reading error of the mean draught
/// as an uncertain zero. Nothing outside the table. A correction for which the table has no column, or the
/// barge no length, is taken as none and named. Source: UK P&I Club, "Measurement of bulk cargoes: draught
/// surveys".
std::optional<Displacement> displacement(const Barge& barge, const BargeTables& tables,
                                         const DraughtReading& reading, double book_water_t_m3,
                                         const Uncertain& mean_u);

}  // namespace spoilbook
