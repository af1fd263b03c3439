// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/barge/panel.h"
#include "forms/barge/shift_hand.h"

namespace spoilbook::form {

class PressButton;
class RecordForm;

/// Where the pontoon stands: spuds down, next station in the lane, spuds up; claim, place and times mendable.
class StationPanel : public Panel {
    Q_OBJECT

 public:
    StationPanel(ShiftHand& hand, QWidget* parent);
    void refresh();

 private:
    void build();

    ShiftHand& hand_;
    PressButton* down_;
    PressButton* up_;
    PressButton* next_;
    RecordForm* form_;
};

}  // namespace spoilbook::form
