// SPDX-License-Identifier: GPL-3.0-or-later
#include <ogr_geometry.h>

#include "model/unit/metres.h"
