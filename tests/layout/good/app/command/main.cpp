// SPDX-License-Identifier: GPL-3.0-or-later
#include <chrono>
#include <cstdlib>

#include "forms/print/page.h"
#include "model/unit/metres.h"

int main() {
    const auto now = std::chrono::system_clock::now();
    return std::getenv("HOME") != nullptr && now.time_since_epoch().count() > 0 ? 0 : 1;
}
