// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/unit/checked.h"

namespace spoilbook {

/// The folder of a path, absolute.
std::string folder_of(const std::string& path);
/// The path with links followed, so that one book has one lock whatever name it is opened by; as it was given
/// where it does not exist.
std::string real_path(const std::string& path);
/// Gives a finished file its name beside it, and makes that durable. Refused where the name is taken.
/// The name `part` stays as well.
Checked<Done> take_the_name(const std::string& part, const std::string& path);

}  // namespace spoilbook
