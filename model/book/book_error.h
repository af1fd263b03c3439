// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>

namespace spoilbook {

/// The file, the disk or the schema is broken: not a person's mistake. The text says what and where.
class BookError : public std::runtime_error {
 public:
    using std::runtime_error::runtime_error;
};

}  // namespace spoilbook
