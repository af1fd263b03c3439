// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/release_rows.h"
#include "forms/works/drawing.h"

namespace spoilbook::form {

/// Where a label of this size stands: right of its release, left of it where it would be cut there, always
/// inside `place`; narrower where it is wider than that.
QRectF label_beside(const QPointF& at, const QSizeF& size, const QRectF& place);

/// Grounds, cells and releases from above, north up. Wheel or + and − zoom, dragging or arrows move, 0 shows
/// all. It is a picture of the book's records, not a chart to sail by.
class ReleaseMap : public Drawing {
    Q_OBJECT

 public:
    explicit ReleaseMap(QWidget* parent);

    void show_shapes(std::vector<MapShape> shapes);
    /// Drawn in this order, inside first, so that what matters lies on top.
    void show_releases(const std::vector<ReleaseRow>& rows);
    /// Rings one release; -1: none.
    void mark(int row);
    void show_all();
    void zoom(double factor, QPointF about);

 signals:
    /// A release was pressed on.
    void picked(int row);

 protected:
    void draw(QPainter& painter, const QRectF& place, const Palette& tones) const override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

 private:
    struct Dot {
        int row;
        QPointF place;
        State state;
        QString label;
    };
    [[nodiscard]] QTransform on_paper(const QRectF& place) const;
    void draw_shapes(QPainter& painter, const QTransform& to, const Palette& tones) const;
    void draw_names(QPainter& painter, const QRectF& place, const QTransform& to, const Palette& tones) const;
    void draw_dots(QPainter& painter, const QRectF& place, const QTransform& to, const Palette& tones) const;
    void draw_scale(QPainter& painter, const QRectF& place, const QTransform& to, const Palette& tones) const;

    std::vector<MapShape> shapes_;
    std::vector<Dot> dots_;
    QRectF extent_;  ///< of all shapes and dots, m
    double zoom_ = 1;
    QPointF shift_;  ///< of the middle, m
    QPointF pressed_, last_;
    int marked_ = -1;
};

}  // namespace spoilbook::form
