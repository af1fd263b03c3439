// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/barge_desk.h"

#include "forms/barge/shift_list_page.h"
#include "forms/barge/shift_page.h"
#include "forms/barge/trip_page.h"

namespace spoilbook::form {

std::vector<Leaf> barge_leaves(BookSession& session, Receiver* receiver) {
    return {
        {QStringLiteral("shift"), ShiftPage::tr("Running shift"), QStringLiteral("shift"),
         [&session, receiver](QWidget* parent) -> QWidget* {
             return new ShiftPage(session, parent, receiver);
         }},
        {QStringLiteral("trip"), TripPage::tr("Trip"), QStringLiteral("tug"),
         [&session, receiver](QWidget* parent) -> QWidget* {
             return new TripPage(session, parent, receiver);
         }},
        {QStringLiteral("shifts"), ShiftListPage::tr("Shifts"), QStringLiteral("table"),
         [&session](QWidget* parent) -> QWidget* { return new ShiftListPage(session, parent); }},
    };
}

}  // namespace spoilbook::form
