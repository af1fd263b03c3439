// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>

namespace spoilbook::form {

class BookSession;
class Sheet;

/// What a table calls to have one of its loads laid open.
using OpensLoad = std::function<void(const QString& load)>;

/// Lays the load on this sheet. Both must outlive the answer.
OpensLoad opens_loads(BookSession& session, Sheet* sheet);

}  // namespace spoilbook::form
