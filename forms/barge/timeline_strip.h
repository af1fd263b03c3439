// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "model/progress/shift_timeline.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// The shift as one ruled strip: hours across; stations, loads, trips with their releases, delays below each
/// other. A stretch that nothing accounts for is hatched and says so, and asks for nothing.
class TimelineStrip : public QWidget {
    Q_OBJECT

 public:
    explicit TimelineStrip(QWidget* parent = nullptr);

    void show_timeline(ShiftTimeline timeline, const Zone& zone);
    [[nodiscard]] const ShiftTimeline& timeline() const { return timeline_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

 private:
    [[nodiscard]] double across(Instant at) const;
    [[nodiscard]] QRectF place_of(const ShiftSpan& span) const;
    [[nodiscard]] QString words_of(const ShiftSpan& span) const;
    void paint_hours(QPainter& painter) const;
    void paint_span(QPainter& painter, const ShiftSpan& span) const;
    void say();

    ShiftTimeline timeline_;
    Zone zone_ = Zone::utc();
    Period shown_;
};

}  // namespace spoilbook::form
