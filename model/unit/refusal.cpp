// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/refusal.h"

#include <utility>

namespace spoilbook {

namespace {

/// A label or a file's name may hold line breaks and what moves a terminal's cursor: each is shown as a
/// blank.
std::string on_one_line(std::string text) {
    for (auto& c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x20 || byte == 0x7f) c = ' ';
    }
    return text;
}

}  // namespace

std::string one_line(const Refusal& refusal) {
    std::string line = refusal.where.empty() ? refusal.what : refusal.where + ": " + refusal.what;
    if (!refusal.mend.empty()) line += "; " + refusal.mend;
    return on_one_line(std::move(line));
}

std::string one_line(const Note& note) {
    return on_one_line(note.where.empty() ? note.what : note.where + ": " + note.what);
}

}  // namespace spoilbook
