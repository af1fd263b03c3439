// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace spoilbook {

/// A label as the stem of a file's name: T-0412 stays; what a file's name cannot hold (a slash, a colon, a
/// leading point, …) is written %2F as in RFC 3986. `sites` and `service` get their first letter so written,
/// since turbidity/ has files of those names.
std::string file_stem_of(std::string_view label);

/// The label that a stem stands for; %2F is a slash, a % that no two hexadecimal digits follow is itself.
std::string label_of_stem(std::string_view stem);

}  // namespace spoilbook
