// SPDX-License-Identifier: GPL-3.0-or-later
// Where a position lies, in the reader's words. Plain functions of the model's answers.
#pragma once

#include <QString>

#include "forms/barge/receiver.h"
#include "forms/shared/state_mark.h"
#include "model/answer/cell_said.h"
#include "model/answer/hopper_now.h"

namespace spoilbook::form {

/// A state with its word, and a sentence beside it.
struct PlaceWords {
    State state = State::unknown;
    QString word;
    QString text;
};

/// "inside" · "Gannet Patch, 412 m from its edge"; a position whose ground is not known has a word alone.
PlaceWords spot_words(const Spot& spot);
/// "3 900 km from Gannet Patch: is the latitude's sign right?"; empty: it is not odd.
QString odd_place_words(const Spot& spot);
/// Of the written cell: "B2, not A1" · "A1 is written, the position lies 212 m outside it, in B2"; an empty
/// word: nothing is odd.
PlaceWords cell_words(const CellSaid& said);
/// "fix" · "2 s old, ± 9 m (95 %)".
PlaceWords receiver_words(const Receiver& receiver);
/// "Hopper 412 m inside Gannet Patch, ± 31 m (95 %)", and whose place it is where it is not the hopper's.
QString hopper_words(const HopperNow& now);
/// "Cell B2: 143° true, 1 240 m"; empty: none.
QString cell_way_words(const HopperNow& now);

}  // namespace spoilbook::form
