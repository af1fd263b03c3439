// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include "forms/barge/panel.h"
#include "forms/barge/shift_hand.h"

class QPushButton;

namespace spoilbook::form {

class PressButton;
class ReceiverLine;
class RecordForm;
class ReleaseLine;
class SpotLine;

/// One trip, press by press: cast off, doors open, empty, doors shut, alongside. The one that is due answers
/// F7. Ground, cell and place are chosen or offered, never filled in.
class TripPanel : public Panel {
    Q_OBJECT

 public:
    /// `whole`: with every field of trip and release, as the tug master's page shows it.
    TripPanel(ShiftHand& hand, bool whole, QWidget* parent);
    void refresh();

 signals:
    /// The rest of this trip was asked for.
    void more_asked();
    /// How the receiver is reached was asked for.
    void receiver_asked();

 private:
    enum TripPress { off, open, emptied, shut, back, steps };

    void build_presses(QBoxLayout* into);
    QWidget* build_boxes();
    QWidget* build_rest();
    void press(int step);
    [[nodiscard]] const Trip* shown_trip(const Running& now) const;
    void show_steps(const Trip* trip, const Running& now);
    void show_places(const Trip* trip);
    void ask_release(const Trip* trip, const Running& now);
    void show_receiver(const Trip* trip);
    void offer_cell(const QString& cell);
    [[nodiscard]] QString state_of(const Trip* trip) const;

    ShiftHand& hand_;
    bool whole_;
    std::array<PressButton*, steps> presses_{};
    ReleaseLine* line_;
    ReceiverLine* receiver_line_ = nullptr;  ///< null: this desk has no receiver
    QString due_cell_;
    PressButton* turned_;
    QPushButton* more_;
    RecordForm* trip_;
    RecordForm* release_;
    QWidget* bound_for_;    ///< where the trip is bound, before its doors open
    QWidget* released_at_;  ///< where it was released
    SpotLine* released_spot_ = nullptr;
};

}  // namespace spoilbook::form
