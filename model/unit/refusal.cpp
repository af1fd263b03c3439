// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/refusal.h"

namespace spoilbook {

std::string one_line(const Refusal& refusal) {
    std::string line = refusal.where.empty() ? refusal.what : refusal.where + ": " + refusal.what;
    if (!refusal.mend.empty()) line += "; " + refusal.mend;
    return line;
}

std::string one_line(const Note& note) {
    return note.where.empty() ? note.what : note.where + ": " + note.what;
}

}  // namespace spoilbook
