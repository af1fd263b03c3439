// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "forms/works/drawing.h"

namespace spoilbook::form {

/// One bar: its value with ± u as a whisker. Without a value (nothing known) only its name stands there.
struct Bar {
    QString name;
    std::optional<double> value;
    double u = 0;
    QString value_text;
    bool over = false;  ///< above the limit
};

struct BarsData {
    QString axis;  ///< "in situ, m³"
    std::vector<Bar> bars;
    std::optional<double> limit;
    QString limit_text;
    QString empty_text;
};

/// Upright bars from nil, and a limit drawn across. One that is over is hatched as well as coloured.
class Bars : public Drawing {
    Q_OBJECT

 public:
    explicit Bars(const QString& title, QWidget* parent);
    void show_data(BarsData data);
    [[nodiscard]] const BarsData& data() const { return data_; }

 protected:
    void draw(QPainter& painter, const QRectF& place, const Palette& tones) const override;

 private:
    void draw_bar(QPainter& painter, const Bar& bar, const QRectF& slot, double top,
                  const Palette& tones) const;
    void draw_limit(QPainter& painter, const QRectF& plot, double top, const Palette& tones) const;
    /// The value at the upper edge.
    [[nodiscard]] double top() const;

    BarsData data_;
};

}  // namespace spoilbook::form
