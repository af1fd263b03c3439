// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "forms/shared/book_session.h"
#include "forms/shared/desk.h"

namespace spoilbook::form {

class Receiver;

/// The leaves of the barge desk in their order: running shift, trip, shifts. `receiver` outlives them; null:
/// this desk has none.
std::vector<Leaf> barge_leaves(BookSession& session, Receiver* receiver);

}  // namespace spoilbook::form
