// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/quantity_text.h"

namespace spoilbook {

std::string unit_text(const Quantity& quantity) {
    return quantity.share_of_total ? "%" : counted_unit(quantity);
}

std::string counted_unit(const Quantity& quantity) {
    switch (quantity.measure) {
        case LimitMeasure::in_situ_m3:
            return "m³ in situ";
        case LimitMeasure::hopper_m3:
            return "m³ hopper";
        case LimitMeasure::wet_t:
            return "t wet";
        case LimitMeasure::dry_t:
            return "t dry";
        default:
            return measure_text(quantity.measure);
    }
}

double shown_scale(const Quantity& quantity) {
    return quantity.share_of_total ? 100 : 1;
}

int shown_decimals(const Quantity& quantity) {
    return quantity.share_of_total || quantity.measure == LimitMeasure::hours ? 1 : 0;
}

}  // namespace spoilbook
