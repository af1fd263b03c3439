// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/station_panel.h"

#include <QLocale>

#include "forms/barge/desk_words.h"
#include "forms/barge/press_button.h"
#include "forms/barge/record_form.h"
#include "forms/shared/time_typed.h"

namespace spoilbook::form {

StationPanel::StationPanel(ShiftHand& hand, QWidget* parent)
    : Panel(tr("Station"), QStringLiteral("station"), parent),
      hand_(hand),
      down_(new PressButton(tr("Spuds down"), QStringLiteral("down"), Qt::Key_F2, this)),
      up_(new PressButton(tr("Spuds up"), QStringLiteral("up"), Qt::Key_F2, this)),
      next_(new PressButton(tr("Next station"), QStringLiteral("station"), Qt::Key_F3, this)),
      form_(new RecordForm(hand.session(), kind("station"), this)) {
    build();
    connect(down_, &QPushButton::clicked, this, [this] { hand_.spuds_down(); });
    connect(up_, &QPushButton::clicked, this, [this] { hand_.spuds_up(); });
    connect(next_, &QPushButton::clicked, this, [this] { hand_.next_station_in_lane(); });
}

void StationPanel::build() {
    body()->addWidget(down_);
    body()->addWidget(next_);
    body()->addWidget(up_);
    form_->set_short_times();
    auto* boxes = form_grid();
    boxes->addWidget(form_->add("claim", this), 0, 0, Qt::AlignTop);
    boxes->addWidget(form_->add("heading_deg", this), 0, 1, Qt::AlignTop);
    boxes->addWidget(form_->add("easting_m", this), 1, 0, Qt::AlignTop);
    boxes->addWidget(form_->add("northing_m", this), 1, 1, Qt::AlignTop);
    boxes->addWidget(form_->add("spuds_down", this), 2, 0, Qt::AlignTop);
    boxes->addWidget(form_->add("spuds_up", this), 2, 1, Qt::AlignTop);
    body()->addLayout(boxes);
    body()->addStretch();
}

void StationPanel::refresh() {
    const Running now = hand_.now_running();
    const Station* shown = now.station;
    for (const Station& station : hand_.season().stations.rows()) {
        if (!now.station && now.shift && station.shift == now.shift->id) shown = &station;
    }
    const auto offer = hand_.offered_station();
    const QString place = offer ? tr("%1 m on: %2")
                                      .arg(QLocale().toString(std::abs(offer->step_m), 'f', 1),
                                           place_words(offer->easting_m, offer->northing_m, std::nullopt))
                                : tr("no place known to go on from");
    down_->setVisible(!now.station);
    up_->setVisible(now.station != nullptr);
    next_->setVisible(now.station != nullptr);
    down_->set_note(place);
    next_->set_note(place);
    down_->set_due(!now.station);
    form_->set_after(now.shift ? now.shift->start : std::nullopt);
    form_->show(shown ? shown->station : std::string());
    if (!shown) return set_state(tr("none yet on this shift"));
    const QString label = QString::fromStdString(shown->station);
    if (!now.station) return set_state(tr("%1, spuds are up").arg(label));
    set_state(tr("%1 since %2").arg(label, time_shown(*now.station->spuds_down, hand_.session().zone())));
}

}  // namespace spoilbook::form
