// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/what_if_panel.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "forms/shared/button.h"
#include "forms/shared/day_typed.h"
#include "forms/shared/flow_layout.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/text_field.h"

namespace spoilbook::form {
namespace {

constexpr int cell_width = 19 * grid;
constexpr int whole = 100;      // sliders of factors and shares count hundredths
constexpr double half = 0.5;    // those of hours and days, halves
constexpr double five_min = 5;  // that of a round trip, five minutes
constexpr int most_barges = 6;
constexpr int most_tugs = 4;

QString with_sign(double value, const QLocale& locale) {
    return (value < 0 ? QStringLiteral("− ") : QStringLiteral("+ ")) +
           number_shown(std::abs(value), 0, locale);
}

}  // namespace

WhatIfPanel::WhatIfPanel(QWidget* parent)
    : QWidget(parent),
      foot_(new QWidget(this)),
      words_(make_quiet({}, Step::small, foot_)),
      back_(make_button(ButtonKind::quiet, tr("Back to the log"), {}, foot_)) {
    auto* cells = new FlowLayout(this);
    cells->setSpacing(2 * grid);
    add(barges, tr("Barges"), 1, most_barges, 1);
    add(tugs, tr("Tugs"), 1, most_tugs, 1);
    add(haul, tr("Haul"), -10, 30, 1);
    add(round_trip, tr("Round trip"), -12, 48, 1);
    add(shift_hours, tr("Shift hours a day"), 1, 48, 1);
    add(days_a_week, tr("Days a week"), 1, 14, 1);
    add(rate, tr("In-situ m³ an hour"), whole / 2, 2 * whole, 5);
    add(over_dredge, tr("Over-dredge"), 0, whole / 2, 1);
    opens_ = add_day(tr("Season opens"), opens_on_);
    closes_ = add_day(tr("Season closes"), closes_on_);
    build_foot();
    set_logged({}, {});
    knows_log_ = false;
    controls_[rate].home = whole;
    back_to_log();
}

void WhatIfPanel::build_foot() {
    auto* line = new QHBoxLayout(foot_);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(2 * grid);
    words_->setWordWrap(true);
    line->addWidget(words_, 1);
    line->addWidget(back_, 0, Qt::AlignVCenter);
    // The words do not jump when it comes.
    QSizePolicy keeps = back_->sizePolicy();
    keeps.setRetainSizeWhenHidden(true);
    back_->setSizePolicy(keeps);
    connect(back_, &QPushButton::clicked, this, &WhatIfPanel::back_to_log);
}

void WhatIfPanel::add(Which which, const QString& name, int least, int most, int step) {
    auto* cell = new QWidget(this);
    cell->setFixedWidth(cell_width);
    auto* column = new QVBoxLayout(cell);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(half_grid);
    Control& control = controls_[which];
    control.slider = new QSlider(Qt::Horizontal, cell);
    control.caption = make_quiet(name, Step::small, cell);
    control.slider->setRange(least, most);
    control.slider->setSingleStep(step);
    control.slider->setPageStep(5 * step);
    control.slider->setAccessibleName(name);
    control.caption->setBuddy(control.slider);
    column->addWidget(control.caption);
    column->addWidget(control.slider);
    column->addStretch();
    layout()->addWidget(cell);
    connect(control.slider, &QSlider::valueChanged, this, [this] {
        show_values();
        emit changed();
    });
}

// A page that scrolls asks for least heights alone: it would lay the second row below the panel's end.
bool WhatIfPanel::event(QEvent* event) {
    const bool is_done = QWidget::event(event);
    if (event->type() == QEvent::Resize || event->type() == QEvent::LayoutRequest) {
        const int needed = layout()->heightForWidth(width());
        if (needed != minimumHeight()) {
            setMinimumHeight(needed);
            emit height_changed();
        }
    }
    return is_done;
}

TextField* WhatIfPanel::add_day(const QString& name, std::optional<Day>& day) {
    auto* field = new TextField(name, {}, this);
    field->setFixedWidth(cell_width);
    field->findChild<QLineEdit*>()->setPlaceholderText(tr("as the consent"));
    layout()->addWidget(field);
    connect(field, &TextField::committed, this, [this, field, &day] { read_day(field, day); });
    return field;
}

void WhatIfPanel::read_day(TextField* field, std::optional<Day>& day) {
    const auto before = day;
    day.reset();
    field->show_problem({});
    if (!field->text().trimmed().isEmpty()) {
        day = day_typed(field->text(), as_at_, QLocale());
        if (!day) field->show_problem(tr("Write it as 30 June or 2026-06-30."));
    }
    if (day == before) return;
    show_values();
    emit changed();
}

bool WhatIfPanel::moved(Which which) const {
    const Control& control = controls_[which];
    return control.slider->isEnabled() && control.slider->value() != control.home;
}

std::optional<double> WhatIfPanel::moved_to(Which which, double unit) const {
    return moved(which) ? std::optional(unit * controls_[which].slider->value()) : std::nullopt;
}

WorksSupposed WhatIfPanel::supposed() const {
    WorksSupposed supposed;
    if (moved(barges)) supposed.barges = controls_[barges].slider->value();
    if (moved(tugs)) supposed.tugs = controls_[tugs].slider->value();
    supposed.haul_more_km = moved_to(haul, 1);
    supposed.round_trip_more_min = moved_to(round_trip, five_min);
    supposed.hours_a_day = moved_to(shift_hours, half);
    supposed.days_a_week = moved_to(days_a_week, half);
    supposed.others.rate_factor = double(controls_[rate].slider->value()) / whole;
    supposed.others.over_dredge_share = double(controls_[over_dredge].slider->value()) / whole;
    supposed.others.season_opens = opens_on_;
    supposed.others.season_closes = closes_on_;
    return supposed;
}

void WhatIfPanel::set_home(Which which, bool is_known, int home, int least, int most) {
    Control& control = controls_[which];
    const QSignalBlocker quiet(control.slider);
    const bool stays = moved(which);
    control.slider->setRange(std::min(least, home), std::max(most, home));
    control.slider->setEnabled(is_known);
    control.home = home;
    if (!stays || !is_known) control.slider->setValue(home);
}

void WhatIfPanel::set_logged(const WorksLogged& logged, Day as_at) {
    logged_ = logged;
    as_at_ = as_at;
    const WorksSupposed before = supposed();
    const Pace& pace = logged.pace;
    const bool has_pace = logged.why_no_pace().empty();
    set_home(barges, has_pace, has_pace ? int(pace.barges) : 1, 1, most_barges);
    set_home(tugs, has_pace, has_pace ? int(pace.tugs) : 1, 1, most_tugs);
    set_home(haul, has_pace && logged.tow, 0, -10, 30);
    set_home(round_trip, has_pace, 0, -12, 48);
    const auto& pattern = logged.pattern;
    set_home(shift_hours, pattern.has_value(), pattern ? int(std::lround(pattern->hours_a_day / half)) : 1, 1,
             48);
    set_home(days_a_week, pattern.has_value(), pattern ? int(std::lround(pattern->days_a_week / half)) : 1, 1,
             14);
    knows_log_ = true;
    show_values();
    if (!(before == supposed())) emit changed();
}

QString WhatIfPanel::shown(Which which) const {
    const QLocale locale;
    const Control& control = controls_[which];
    const int value = control.slider->value();
    if (!control.slider->isEnabled()) {
        const QString name = control.slider->accessibleName();
        return knows_log_ ? tr("%1: not logged").arg(name) : name;
    }
    switch (which) {
        case barges:
            return tr("Barges %1").arg(value);
        case tugs:
            return tr("Tugs %1").arg(value);
        case haul:
            return tr("Haul %1 km").arg(with_sign(value, locale));
        case round_trip: {
            const QString logged = number_shown(logged_.pace.round_trip->median, 0, locale);
            return moved(which) ? tr("Round trip %1 %2 min").arg(logged, with_sign(five_min * value, locale))
                                : tr("Round trip %1 min").arg(logged);
        }
        case shift_hours:
            return tr("Shift hours a day %1")
                .arg(number_shown(moved_to(which, half).value_or(logged_.pattern->hours_a_day), 1, locale));
        case days_a_week:
            return tr("Days a week %1")
                .arg(number_shown(moved_to(which, half).value_or(logged_.pattern->days_a_week), 1, locale));
        case rate:
            return tr("In-situ m³ an hour × %1").arg(number_shown(double(value) / whole, 2, locale));
        case over_dredge:
            return tr("Over-dredge %1 %").arg(value);
        case count:
            break;
    }
    return {};
}

void WhatIfPanel::show_values() {
    for (int i = 0; i < count; ++i) {
        const QString words = shown(Which(i));
        controls_[std::size_t(i)].caption->setText(words);
        controls_[std::size_t(i)].slider->setAccessibleDescription(words);
    }
    const bool nothing = supposed() == WorksSupposed{};
    // Who goes back by the key loses the button under her finger: the first control takes the keyboard.
    if (back_->hasFocus() && nothing) {
        const auto first = std::find_if(controls_.begin(), controls_.end(),
                                        [](const Control& control) { return control.slider->isEnabled(); });
        if (first != controls_.end()) first->slider->setFocus();
    }
    back_->setVisible(!nothing);
}

void WhatIfPanel::tell(const QString& words) {
    words_->setText(words);
}

void WhatIfPanel::back_to_log() {
    for (Control& control : controls_) {
        const QSignalBlocker quiet(control.slider);
        control.slider->setValue(control.home);
        control.slider->update();
    }
    for (TextField* field : {opens_, closes_})
        field->set_text({});
    opens_on_.reset();
    closes_on_.reset();
    show_values();
    emit changed();
}

}  // namespace spoilbook::form
