// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "forms/shared/book_session.h"
#include "forms/shared/desk.h"

namespace spoilbook::form {

/// The leaves of the barge desk in their order: running shift, trip, shifts.
std::vector<Leaf> barge_leaves(BookSession& session);

}  // namespace spoilbook::form
