// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/palette.h"

class QPainter;

namespace spoilbook::form {

/// A widget that paints one picture, which can leave the screen as PNG, SVG or PDF.
class Drawing : public QWidget {
    Q_OBJECT

 public:
    /// `title` names the picture to readers and in the export's file name.
    explicit Drawing(const QString& title, QWidget* parent);

    /// Empty: written; otherwise why not. By the ending of `path`; drawn in the day palette: paper is white.
    QString write(const QString& path) const;
    void ask_export();

 signals:
    void exported(const QString& path);
    void failed(const QString& why);

 protected:
    virtual void draw(QPainter& painter, const QRectF& place, const Palette& tones) const = 0;
    void paintEvent(QPaintEvent* event) override;

 private:
    void draw_page(QPainter& painter) const;

    QString title_;
};

}  // namespace spoilbook::form
