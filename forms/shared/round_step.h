// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace spoilbook::form {

/// The step of an axis of `span` > 0: 1, 2 or 5 times a power of ten, so that there are about so many.
double round_step(double span, int about = 5);

}  // namespace spoilbook::form
