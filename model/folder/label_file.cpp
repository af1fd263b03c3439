// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/label_file.h"

#include <fmt/format.h>

#include "model/record/kind.h"

namespace spoilbook {

namespace {

int digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    return -1;
}

bool must_be_written_out(char c) {
    constexpr std::string_view awkward = "/\\:*?\"<>|%";
    return static_cast<unsigned char>(c) < 0x20 || c == 0x7F || awkward.find(c) != std::string_view::npos;
}

}  // namespace

std::string file_stem_of(std::string_view label) {
    std::string stem;
    const bool reserved = find_kind("turbidity/" + std::string(label)) != nullptr || label.starts_with('.');
    for (std::size_t i = 0; i < label.size(); ++i) {
        if (must_be_written_out(label[i]) || (i == 0 && reserved)) {
            stem += fmt::format("%{:02X}", static_cast<unsigned char>(label[i]));
        } else {
            stem += label[i];
        }
    }
    return stem;
}

std::string label_of_stem(std::string_view stem) {
    std::string label;
    for (std::size_t i = 0; i < stem.size(); ++i) {
        const bool written_out =
            stem[i] == '%' && i + 2 < stem.size() && digit(stem[i + 1]) >= 0 && digit(stem[i + 2]) >= 0;
        if (!written_out) {
            label += stem[i];
            continue;
        }
        label += static_cast<char>(digit(stem[i + 1]) * 16 + digit(stem[i + 2]));
        i += 2;
    }
    return label;
}

}  // namespace spoilbook
