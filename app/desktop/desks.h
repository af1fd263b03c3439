// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "forms/shared/book_session.h"
#include "forms/shared/desk.h"
#include "forms/shared/memory.h"

namespace spoilbook {

/// The desks of the program, in the order of their dividers. The session outlives every leaf, and `memory`
/// the session.
std::vector<form::Desk> make_desks(form::BookSession& session, form::Memory& memory);

}  // namespace spoilbook
