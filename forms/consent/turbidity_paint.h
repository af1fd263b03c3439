// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/turbidity_frame.h"

class QPainter;

namespace spoilbook::form {

void draw_turbidity(QPainter& painter, const TurbidityFrame& frame, const TurbidityDrawn& drawn, int marked,
                    const Palette& tones);

/// The same in one sentence, for who cannot see it.
QString turbidity_said(const TurbidityDrawn& drawn);

/// "20.2: median over 6 h"
QString statistic_name(const TriggerCondition& condition);

}  // namespace spoilbook::form
