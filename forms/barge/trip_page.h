// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>

#include "forms/barge/shift_hand.h"

namespace spoilbook::form {

class Sheet;

/// The tug master's page: the trip alone.
class TripPage : public QWidget {
    Q_OBJECT

 public:
    /// `receiver` outlives the page; null: this desk has none.
    explicit TripPage(BookSession& session, QWidget* parent = nullptr, Receiver* receiver = nullptr);

 private:
    void open_receiver();

    ShiftHand hand_;
    QPointer<Sheet> sheet_;
};

}  // namespace spoilbook::form
