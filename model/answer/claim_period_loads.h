// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "model/consent/ledger.h"
#include "model/volume/reconcile_period.h"

namespace spoilbook {

/// A claim and the span in which the loads from it count: loading ended in [from, to).
struct ClaimSpan {
    Id claim;
    Instant from, to;
};

/// What the barges say of one span. In-situ volumes are what was dredged for the loads, by the method that
/// counts where a consent names none.
struct SpanLoads {
    std::size_t loads = 0;
    std::size_t unknown = 0;          ///< of them, without an in-situ volume or a material: not zero
    Estimate in_situ_m3;              ///< Σ V_s at the factors in force
    Estimate hopper_m3;               ///< Σ V_h of the same loads
    Estimate weighed_m3;              ///< of Σ V_s, what does not hang on a bulking factor
    std::vector<Id> materials;        ///< of the rest, ascending
    std::vector<Estimate> bulked_m3;  ///< hopper volume of each of these
};

/// Adds up the loads of every span at once; spans may overlap. A load whose readings enter several sums has
/// its random part as a source of its own there, numbered from ledger.sources().size() on, so that what the
/// sums share is known.
std::vector<SpanLoads> loads_of(const Ledger& ledger, std::span<const ClaimSpan> spans, Instant as_at);

}  // namespace spoilbook
