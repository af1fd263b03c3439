// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/barge/shift_hand.h"

namespace spoilbook::form {

/// The tug master's page: the trip alone.
class TripPage : public QWidget {
    Q_OBJECT

 public:
    explicit TripPage(BookSession& session, QWidget* parent = nullptr);

 private:
    ShiftHand hand_;
};

}  // namespace spoilbook::form
