// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/trip_page.h"

#include <QVBoxLayout>

#include "forms/barge/trip_panel.h"
#include "forms/shared/when_seen.h"

namespace spoilbook::form {

TripPage::TripPage(BookSession& session, QWidget* parent) : QWidget(parent), hand_(session) {
    auto* all = new QVBoxLayout(this);
    auto* panel = new TripPanel(hand_, true, this);
    all->addWidget(panel);
    all->addStretch();
    new WhenSeen(this, session, [panel] { panel->refresh(); });
    panel->refresh();
}

}  // namespace spoilbook::form
