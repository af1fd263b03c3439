// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdlib>
#include <fstream>
#include <string>

namespace spoilbook::bench {

/// Most memory of this program since `forget_peak`, MB, as Linux counts it; 0 where it does not.
inline double peak_mb() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with("VmHWM:")) return std::strtod(line.c_str() + 6, nullptr) / 1024;
    }
    return 0;
}

inline void forget_peak() {
    std::ofstream("/proc/self/clear_refs") << 5;
}

}  // namespace spoilbook::bench
