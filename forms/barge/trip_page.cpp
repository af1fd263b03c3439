// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/trip_page.h"

#include <QVBoxLayout>

#include "forms/barge/receiver_sheet.h"
#include "forms/barge/trip_panel.h"
#include "forms/shared/sheet.h"
#include "forms/shared/type_scale.h"
#include "forms/shared/when_seen.h"

namespace spoilbook::form {

TripPage::TripPage(BookSession& session, QWidget* parent, Receiver* receiver)
    : QWidget(parent), hand_(session, receiver) {
    auto* all = new QVBoxLayout(this);
    auto* panel = new TripPanel(hand_, true, this);
    all->addWidget(panel);
    all->addStretch();
    new WhenSeen(this, session, [panel] { panel->refresh(); });
    connect(panel, &TripPanel::receiver_asked, this, &TripPage::open_receiver);
    panel->refresh();
}

void TripPage::open_receiver() {
    if (!hand_.receiver()) return;
    // Over what is seen of the page, not over what is scrolled away.
    if (!sheet_) sheet_ = new Sheet(parentWidget() ? parentWidget() : this);
    sheet_->open(tr("Receiver"), new ReceiverSheet(*hand_.receiver()), 60 * grid);
}

}  // namespace spoilbook::form
