// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/hydrostatics.h"

#include <cmath>

#include "model/volume/assumptions.h"

namespace spoilbook {
namespace {

void correct_trim(const Barge& barge, const BargeTables& tables, Displacement& into) {
    const double trim = into.trim_by_stern_m;
    if (trim == 0) return;
    into.assumed.push_back(assumption::marks_at_ends);
    const double draught = into.mean_draught_m;
    const auto lcf = tables.lcf_m.at(draught);
    const auto tpc = tables.tpc.at(draught);
    if (!lcf || !tpc || !barge.lbp_m) {
        into.assumed.push_back(assumption::no_trim_correction);
        return;
    }
    into.first_trim_t = first_trim_correction_t(trim, lcf->y, tpc->y, *barge.lbp_m);
    const auto above = tables.mctc.at(draught + 0.5);
    const auto below = tables.mctc.at(draught - 0.5);
    if (!above || !below) {
        into.assumed.push_back(assumption::no_second_trim_correction);
        return;
    }
    into.second_trim_t = second_trim_correction_t(trim, above->y - below->y, *barge.lbp_m);
}

void correct_list(const BargeTables& tables, const MarkMeans& means, Displacement& into) {
    if (!means.mid_port || !means.mid_starboard) {
        into.assumed.push_back(assumption::four_marks);
        return;
    }
    if (*means.mid_port == *means.mid_starboard) return;
    const auto port = tables.tpc.at(*means.mid_port);
    const auto starboard = tables.tpc.at(*means.mid_starboard);
    if (!port || !starboard) {
        into.assumed.push_back(assumption::no_list_correction);
        return;
    }
    into.list_t = list_correction_t(*means.mid_port, *means.mid_starboard, port->y, starboard->y);
}

}  // namespace

std::optional<MarkMeans> mark_means(const std::vector<double>& marks_m) {
    const auto mean = [&marks_m](std::size_t i) { return (marks_m[i] + marks_m[i + 1]) / 2; };
    if (marks_m.size() == 6) return MarkMeans{mean(0), mean(2), mean(4), marks_m[2], marks_m[3]};
    if (marks_m.size() == 4) return MarkMeans{mean(0), (mean(0) + mean(2)) / 2, mean(2), {}, {}};
    return std::nullopt;
}

double mean_draught_m(const MarkMeans& means, std::int64_t divisor) {
    const double weight = divisor == 6 ? 4 : 6;
    return (means.fore + means.aft + weight * means.mid) / (2 + weight);
}

double first_trim_correction_t(double trim_by_stern_m, double lcf_forward_m, double tpc_t_per_cm,
                               double lbp_m) {
    return -trim_by_stern_m * 100 * lcf_forward_m * tpc_t_per_cm / lbp_m;
}

double second_trim_correction_t(double trim_m, double mctc_change_per_m, double lbp_m) {
    return 50 * trim_m * trim_m * mctc_change_per_m / lbp_m;
}

double list_correction_t(double port_m, double starboard_m, double tpc_port, double tpc_starboard) {
    return 6 * (port_m - starboard_m) * (tpc_port - tpc_starboard);
}

std::optional<Displacement> displacement(const Barge& barge, const BargeTables& tables,
                                         const DraughtReading& reading, double book_water_t_m3,
                                         const Uncertain& mean_u) {
    Displacement found;
    found.mean_draught_m = mean_draught_m(reading.means, barge.draught_mean.value_or(8));
    found.trim_by_stern_m = reading.means.trim_by_stern_m();
    const auto point = tables.displacement_t.at(found.mean_draught_m);
    if (!point) return std::nullopt;
    correct_trim(barge, tables, found);
    correct_list(tables, reading.means, found);
    const double of_table = barge.hydrostatic_density_t_m3.value_or(book_water_t_m3);
    if (!reading.density_t_m3) found.assumed.push_back(assumption::density_not_read);
    const double ratio = reading.density_t_m3.value_or(of_table) / of_table;
    const double weight = (point->y + found.first_trim_t + found.second_trim_t + found.list_t) * ratio;
    found.weight_t = mean_u.through(weight, point->slope * ratio);
    return found;
}

}  // namespace spoilbook
