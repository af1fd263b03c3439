// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "forms/shared/state_mark.h"
#include "forms/works/drawing.h"
#include "model/answer/turbidity_view.h"

namespace spoilbook::form {

/// A passed trigger as a bar over its time.
struct EventBar {
    Period span;  ///< to the as-at where it is open
    bool open = false;
    QString name;  ///< "20.2 · R1"
    State state = State::clear;
    std::size_t row = 0;  ///< bars of one condition stand in one row
};

/// What the chart draws. `keeps` holds what the view points into.
struct TurbidityDrawn {
    TurbidityView view;
    std::vector<EventBar> events;
    std::vector<Period> digging, releasing;
    Zone zone = Zone::utc();
    std::shared_ptr<const void> keeps;
};

/// Sites over time on one axis: what came faint, what counts solid, statistics, levels that move, flags by
/// shape, passed triggers as bars above, digging and releases as strips below. The wheel and + − zoom,
/// dragging and the arrows pan, Home and End go to the ends, 0 shows all.
class TurbidityChart : public Drawing {
    Q_OBJECT

 public:
    explicit TurbidityChart(const QString& title, QWidget* parent);

    /// New numbers for a window; the window that is shown stays.
    void show_data(TurbidityDrawn drawn);
    [[nodiscard]] const TurbidityDrawn& drawn() const { return drawn_; }
    /// From the first reading to just after the last: no window goes beyond it.
    void set_extent(std::optional<Period> extent) { extent_ = extent; }
    [[nodiscard]] const std::optional<Period>& extent() const { return extent_; }
    /// Shows this window with the numbers at hand; emits nothing.
    void show_window(Period window);
    [[nodiscard]] Period window() const { return window_; }
    /// Marks one of the events; -1: none.
    void mark(int event);
    void set_empty_text(const QString& text);
    [[nodiscard]] const QString& empty_text() const { return empty_text_; }
    /// Columns that the plot is wide.
    [[nodiscard]] int columns() const;

 public slots:
    /// Narrows the window to 1/factor about the share of its width.
    void zoom(double factor, double about = 0.5);
    /// Shifts it by so many of its widths.
    void pan(double widths);
    void show_all();

 signals:
    /// The person wants to see this window: its numbers are to be brought.
    void window_asked(spoilbook::Period window);
    void event_pressed(int event);

 protected:
    void draw(QPainter& painter, const QRectF& place, const Palette& tones) const override;
    void wheelEvent(QWheelEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

 private:
    void ask(Period window);
    [[nodiscard]] int event_at(QPointF place) const;

    TurbidityDrawn drawn_;
    Period window_{Instant{0}, Instant{1}};
    std::optional<Period> extent_;
    std::optional<QPointF> pressed_;
    Period pressed_window_{Instant{0}, Instant{1}};
    bool dragged_ = false;
    int marked_ = -1;
    QString empty_text_;
};

}  // namespace spoilbook::form
