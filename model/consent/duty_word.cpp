// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/duty_word.h"

namespace spoilbook {

std::string duty_word(const DutyTime& time) {
    return time.state == DutyState::done && time.late() ? "done late" : text(time.state);
}

}  // namespace spoilbook
