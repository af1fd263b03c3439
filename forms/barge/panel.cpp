// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/panel.h"

#include <QPainter>

#include "forms/shared/icon.h"
#include "forms/shared/label.h"
#include "forms/shared/paper_style.h"

namespace spoilbook::form {

Panel::Panel(const QString& title, const QString& icon_name, QWidget* parent)
    : QWidget(parent),
      icon_name_(icon_name),
      state_(make_quiet({}, Step::body, this)),
      body_(new QVBoxLayout(this)) {
    setAccessibleName(title);
    body_->setContentsMargins(grid + half_grid, grid, grid + half_grid, grid + half_grid);
    body_->setSpacing(half_grid + 2);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(3 * grid + half_grid, 0, 0, 0);
    head->addWidget(make_label(title, Step::strong, Weight::semibold, this));
    state_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    state_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    head->addWidget(state_, 1);
    body_->addLayout(head);
}

void Panel::set_state(const QString& state) {
    words_ = state;
    setAccessibleDescription(state);
    state_->setToolTip(state);
    fit_state();
}

void Panel::fit_state() {
    state_->setText(state_->fontMetrics().elidedText(words_, Qt::ElideRight, state_->width()));
}

void Panel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit_state();
}

void Panel::paintEvent(QPaintEvent*) {
    const Palette& tones = palette_in_use();
    QPainter painter(this);
    painter.setPen(tones[Tone::line]);
    painter.setBrush(tones[Tone::surface]);
    painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
    painter.drawPixmap(grid + half_grid, grid + 2,
                       icon_picture(icon_name_, tones[Tone::quiet], 20, devicePixelRatioF()));
}

QGridLayout* form_grid() {
    auto* grid_layout = new QGridLayout;
    grid_layout->setHorizontalSpacing(grid);
    grid_layout->setVerticalSpacing(half_grid - 1);
    grid_layout->setColumnStretch(0, 1);
    grid_layout->setColumnStretch(1, 1);
    return grid_layout;
}

}  // namespace spoilbook::form
