// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// Holds a reader's view still while it lives: what is read meanwhile fits together, whatever another program
/// writes. Within a change or another snapshot it does nothing. Do not write to the book while one lives.
/// Throws BookError where the file cannot be read.
class Snapshot {
 public:
    explicit Snapshot(const Book& book);
    ~Snapshot();
    Snapshot(const Snapshot&) = delete;
    Snapshot& operator=(const Snapshot&) = delete;

 private:
    const Book& book_;
    bool mine_ = false;
};

}  // namespace spoilbook
