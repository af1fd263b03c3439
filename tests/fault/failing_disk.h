// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <sqlite3.h>

namespace spoilbook::tests {

/// What goes wrong at the disk.
struct Fault {
    enum class What { write_error, disk_full, torn_write, sync_error };
    What what = What::write_error;
    int at = 0;            ///< the how-manieth writing or syncing fails, from 1; 0: none
    bool lasting = false;  ///< every later one fails as well
};

/// While it lives, every file that SQLite opens goes through it: a layer over the system's own files that
/// fails when told to. One at a time.
class FailingDisk {
 public:
    FailingDisk();
    ~FailingDisk();
    FailingDisk(const FailingDisk&) = delete;
    FailingDisk& operator=(const FailingDisk&) = delete;

    void fail(const Fault& fault);
    void mend();
    /// Whether the fault has struck since it was set.
    [[nodiscard]] bool has_failed() const;

 private:
    sqlite3_vfs layer_{};
};

}  // namespace spoilbook::tests
