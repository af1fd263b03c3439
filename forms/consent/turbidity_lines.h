// SPDX-License-Identifier: GPL-3.0-or-later
// Readings, statistics and levels on the turbidity chart.
#pragma once

#include <optional>

#include "forms/consent/turbidity_frame.h"

class QPainter;

namespace spoilbook::form {

/// How one site is told from the others: by its tone and its stroke.
struct SiteLook {
    Tone tone = Tone::series_1;
    Qt::PenStyle stroke = Qt::SolidLine;
};

SiteLook look_of(const TurbidityView& view, std::size_t site);

/// What came faint, what counts solid (a band with its median where a column holds several), flags by shape:
/// ▽ suspect, × failed, a tick on the ground where a value is missing.
void draw_readings(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, SiteLook look,
                   const Palette& tones);
/// Each statistic that the site's conditions ask for, once.
void draw_statistics(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, SiteLook look,
                     const Palette& tones);
/// Levels as steps; they move with the control.
void draw_levels(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const Palette& tones);
void name_levels(QPainter& painter, const TurbidityFrame& frame, const ViewSite& site, const Palette& tones);
/// One line or mark of the key with its words, as wide as both.
struct KeyPart {
    QRectF place;  ///< within the key
    QString words;
    std::optional<std::size_t> site = {};       ///< whose readings or statistic its line stands for
    std::optional<std::size_t> statistic = {};  ///< which of the statistics; nothing: the readings
    bool levels = false;
};
/// The parts from left to right, on as many lines as the width asks for.
std::vector<KeyPart> key_parts(const TurbidityView& view, double width);
void draw_key(QPainter& painter, const TurbidityFrame& frame, const TurbidityView& view,
              const Palette& tones);

}  // namespace spoilbook::form
