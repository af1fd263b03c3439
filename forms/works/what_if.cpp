// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/what_if.h"

#include <QGridLayout>
#include <QSignalBlocker>
#include <QSlider>
#include <QStackedWidget>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/works/forecast_words.h"

namespace spoilbook::form {
namespace {

constexpr int whole = 100;  // sliders count hundredths
constexpr int most_over_dredge = 50;

}  // namespace

WhatIf::WhatIf(QWidget* parent)
    : QWidget(parent),
      places_(new QGridLayout(this)),
      words_(make_quiet({}, Step::small, this)),
      back_(make_button(ButtonKind::quiet, tr("Back to the log"), {}, this)),
      beside_(new QStackedWidget(this)) {
    places_->setContentsMargins(0, 0, 0, 0);
    places_->setHorizontalSpacing(2 * grid);
    places_->setVerticalSpacing(0);
    hours_ = add(0, tr("Filling hours"), whole / 2, 2 * whole, 5);
    rate_ = add(1, tr("In-situ m³ an hour"), whole / 2, 2 * whole, 5);
    over_dredge_ = add(2, tr("Over-dredge"), 0, most_over_dredge, 1);
    beside_->addWidget(words_);
    beside_->addWidget(back_);
    beside_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    places_->addWidget(beside_, 0, 3, 2, 1, Qt::AlignVCenter);
    places_->setColumnStretch(3, 1);
    connect(back_, &QPushButton::clicked, this, &WhatIf::back_to_log);
    back_to_log();
}

WhatIf::Control WhatIf::add(int column, const QString& name, int least, int most, int step) {
    Control control{new QSlider(Qt::Horizontal, this), make_quiet(name, Step::small, this)};
    control.slider->setRange(least, most);
    control.slider->setSingleStep(step);
    control.slider->setPageStep(5 * step);
    control.slider->setMinimumWidth(13 * grid);
    control.slider->setAccessibleName(name);
    control.caption->setBuddy(control.slider);
    places_->addWidget(control.caption, 0, column);
    places_->addWidget(control.slider, 1, column);
    places_->setColumnStretch(column, 1);
    connect(control.slider, &QSlider::valueChanged, this, [this] {
        show_values();
        emit changed();
    });
    return control;
}

Supposed WhatIf::supposed() const {
    Supposed supposed;
    supposed.hours_factor = double(hours_.slider->value()) / whole;
    supposed.rate_factor = double(rate_.slider->value()) / whole;
    supposed.over_dredge_share = double(over_dredge_.slider->value()) / whole;
    return supposed;
}

void WhatIf::show_values() {
    const QLocale locale;
    const Supposed now = supposed();
    const auto show = [](const Control& control, const QString& words) {
        control.caption->setText(words);
        control.slider->setAccessibleDescription(words);
    };
    show(hours_, tr("Filling hours × %1").arg(number_shown(now.hours_factor, 2, locale)));
    show(rate_, tr("In-situ m³ an hour × %1").arg(number_shown(now.rate_factor, 2, locale)));
    show(over_dredge_, tr("Over-dredge %1 %").arg(over_dredge_.slider->value()));
    // Who goes back by the key loses the button under her finger: the first control takes the keyboard.
    if (back_->hasFocus() && as_logged(now)) hours_.slider->setFocus();
    beside_->setCurrentIndex(as_logged(now) ? 0 : 1);
}

void WhatIf::tell(const QString& words) {
    words_->setText(words);
}

void WhatIf::back_to_log() {
    {
        const QSignalBlocker hours(hours_.slider);
        const QSignalBlocker rate(rate_.slider);
        const QSignalBlocker over(over_dredge_.slider);
        hours_.slider->setValue(whole);
        rate_.slider->setValue(whole);
        over_dredge_.slider->setValue(0);
    }
    for (QSlider* slider : {hours_.slider, rate_.slider, over_dredge_.slider})
        slider->update();
    show_values();
    emit changed();
}

}  // namespace spoilbook::form
