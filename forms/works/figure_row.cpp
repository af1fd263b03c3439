// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/figure_row.h"

#include <QGridLayout>
#include <QPainter>

#include "forms/shared/figure.h"
#include "forms/shared/paper_style.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {
namespace {

constexpr int wanted_width = 27 * grid;

}  // namespace

FigureRow::FigureRow(QWidget* parent) : QWidget(parent), places_(new QGridLayout(this)) {
    places_->setContentsMargins(0, 0, 0, 0);
    places_->setHorizontalSpacing(4 * grid);
    places_->setVerticalSpacing(2 * grid);
    // Less than four abreast need: narrower, they stand two by two.
    setMinimumWidth(44 * grid);
}

Figure* FigureRow::add() {
    auto* figure = new Figure(this);
    figures_.push_back(figure);
    columns_ = 0;
    lay(2);
    return figure;
}

void FigureRow::lay(int columns) {
    if (columns == columns_) return;
    columns_ = columns;
    for (int c = 0; c < int(figures_.size()); ++c)
        places_->setColumnStretch(c, c < columns ? 1 : 0);
    for (std::size_t i = 0; i < figures_.size(); ++i) {
        places_->removeWidget(figures_[i]);
        places_->addWidget(figures_[i], int(i) / columns, int(i) % columns, Qt::AlignTop);
    }
}

void FigureRow::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const int all = int(figures_.size());
    if (all > 0) lay(width() >= all * wanted_width ? all : std::min(2, all));
}

void FigureRow::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(QPen(palette_in_use()[Tone::line], 1));
    for (std::size_t i = 0; i < figures_.size(); ++i) {
        if (columns_ == 0 || int(i) % columns_ == 0) continue;
        const QRect place = figures_[i]->geometry();
        painter.drawLine(place.left() - 2 * grid, place.top(), place.left() - 2 * grid, place.bottom());
    }
}

}  // namespace spoilbook::form
