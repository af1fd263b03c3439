// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/bed/surface_figures.h"
#include "model/bed/survey_bed.h"

namespace spoilbook {

/// REQUIRES a sound area that is not empty, and a baseline where a rise is bounded. Refused, code "grid":
/// bed and baseline on two maps; a map that does not reach the area; what walk() refuses of either grid. Pure
/// but for reading the grids.
Checked<SurfaceLook> look(const SurveyBed& bed, const SurveyBed* baseline, const Area& area,
                          const SurfaceBounds& bounds);

}  // namespace spoilbook
