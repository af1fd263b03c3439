// SPDX-License-Identifier: GPL-3.0-or-later
// The words of docs/words.md for columns and kinds, in the reader's language.
#pragma once

#include <QString>

#include "model/record/kind.h"
#include "model/unit/estimate.h"
#include "model/unit/instant.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// "cast off" for a trip's `departed`; where no trade word is set down, the column's own name.
QString column_words(const Kind& kind, const Field& field);
QString kind_words(const Kind& kind);

/// "412 ± 9 m³", to the next whole unit; the sign always with its u.
QString estimate_words(const Estimate& estimate, const QString& unit);
/// "1 h 25 min"
QString span_words(std::int64_t ms);
/// "711 527.7 E 5 497 350.3 N, heading 32.9°" in grid metres.
QString place_words(double easting_m, double northing_m, std::optional<double> heading_deg);

}  // namespace spoilbook::form
