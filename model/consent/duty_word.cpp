// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_word.h"

namespace spoilbook {

std::string duty_word(DutyState state, bool late) {
    return state == DutyState::done && late ? "done late" : text(state);
}

std::string duty_word(const DutyTime& time) {
    return duty_word(time.state, time.late());
}

}  // namespace spoilbook
