// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "forms/shared/state_mark.h"
#include "forms/works/drawing.h"
#include "model/volume/reconcile_period.h"

namespace spoilbook::form {

/// One claim-period: what the bed says across, what the barges say up, in-situ m³.
struct BedPoint {
    QString name;
    Measured bed, barges;
    State state = State::clear;
};

struct BedPlotData {
    std::vector<BedPoint> points;
    QString across, up, on_line, empty_text;
};

/// Barges over the bed with ± 2u both ways, and the line on which both say the same. A claim-period that
/// disagrees has another shape as well as another colour.
class BedPlot : public Drawing {
    Q_OBJECT

 public:
    explicit BedPlot(const QString& title, QWidget* parent);
    void show_data(BedPlotData data);
    [[nodiscard]] const BedPlotData& data() const { return data_; }

 protected:
    void draw(QPainter& painter, const QRectF& place, const Palette& tones) const override;

 private:
    struct Frame;
    void draw_axes(QPainter& painter, const Frame& frame, const Palette& tones) const;
    void draw_names(QPainter& painter, const Frame& frame, const Palette& tones) const;
    static void draw_point(QPainter& painter, const Frame& frame, const BedPoint& point,
                           const Palette& tones);

    BedPlotData data_;
};

}  // namespace spoilbook::form
