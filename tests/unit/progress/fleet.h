// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace spoilbook::tests {

/// A dredger, barges and tugs whose turns take the same whole minutes every time.
struct Fleet {
    int barges = 0, tugs = 0;
    int fill = 0, change = 0, round_trip = 0;
};

/// Loads filled in so many minutes from all barges empty alongside, walked minute by minute: a barge is
/// brought under and filled, waits for a free tug, is towed away and back, and waits to be filled. Knows no
/// rate.
inline int loads_filled(const Fleet& fleet, int minutes) {
    int empty = fleet.barges;
    int full = 0;
    int free_tugs = fleet.tugs;
    int under_way_left = 0;  // of the barge under the dredger; 0: none is there
    int filled = 0;
    std::vector<int> tows;  // minutes left of each
    for (int minute = 0; minute < minutes; ++minute) {
        if (under_way_left == 0 && empty > 0) {
            --empty;
            under_way_left = fleet.change + fleet.fill;
        }
        while (full > 0 && free_tugs > 0) {
            --full;
            --free_tugs;
            tows.push_back(fleet.round_trip);
        }
        if (under_way_left > 0 && --under_way_left == 0) {
            ++full;
            ++filled;
        }
        for (auto tow = tows.begin(); tow != tows.end();) {
            if (--*tow > 0) {
                ++tow;
                continue;
            }
            tow = tows.erase(tow);
            ++free_tugs;
            ++empty;
        }
    }
    return filled;
}

}  // namespace spoilbook::tests
