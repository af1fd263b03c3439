// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/instrument.h"

namespace spoilbook {

template <>
const Definition<Instrument>& definition() {
    static const auto d =
        Definition<Instrument>("instrument", "turbidity/instruments.csv",
                               "a logger while it stands at a site, and its calibration")
            .since(3)
            .own_label("id", &Instrument::instrument)
            .ref("site", &Instrument::site, "site", "the site")
            .text("serial", &Instrument::serial, "serial number")
            .instant("deployed", &Instrument::deployed, "it stands there from then on")
            .instant("recovered", &Instrument::recovered, "until just before; blank: it still does")
            .instant_or_day("calibrated", &Instrument::calibrated, "when it was calibrated")
            .instant_or_day("calibrated_until", &Instrument::calibrated_until,
                            "its calibration holds until just before")
            .text("by", &Instrument::by, "who calibrated it")
            .text("remarks", &Instrument::remarks, "remarks")
            .ordered("deployed", "recovered")
            .ordered("calibrated", "calibrated_until");
    return d;
}

}  // namespace spoilbook
