// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/verdict.h"

namespace spoilbook {

PlaceVerdict verdict(double signed_distance_m, double position_u_m) {
    if (!(position_u_m >= 0)) return PlaceVerdict::cannot_tell;
    if (signed_distance_m >= 2 * position_u_m) return PlaceVerdict::inside;
    if (signed_distance_m <= -2 * position_u_m) return PlaceVerdict::outside;
    return PlaceVerdict::cannot_tell;
}

std::string_view text(PlaceVerdict verdict) {
    switch (verdict) {
        case PlaceVerdict::inside:
            return "inside";
        case PlaceVerdict::outside:
            return "outside";
        case PlaceVerdict::cannot_tell:
            break;
    }
    return "cannot_tell";
}

}  // namespace spoilbook
