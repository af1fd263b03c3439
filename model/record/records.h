// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// Every record of words.md, for those who need them all.
#include "model/record/between_surveys.h"
#include "model/record/consent.h"
#include "model/record/duty_done.h"
#include "model/record/harbour.h"
#include "model/record/load.h"
#include "model/record/plant.h"
#include "model/record/shift.h"
#include "model/record/site.h"
#include "model/record/trip.h"
#include "model/record/watched_water.h"
#include "model/record/watchkeeping.h"
