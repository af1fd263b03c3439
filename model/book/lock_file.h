// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>

#include "model/unit/checked.h"

namespace spoilbook {

/// The one writer's claim: an flock on BOOK.sbook-lock, which says who, on which machine, since when. It dies
/// with the process, whatever ends it; the file itself goes when the claim is let go. The book itself is
/// never opened as a plain file: closing that would drop SQLite's own locks.
class LockFile {
 public:
    /// Refused, with the text of the one who holds it, while another process or Book does.
    static Checked<LockFile> take(const std::string& book_path, const std::string& holder);

    LockFile(LockFile&& other) noexcept;
    LockFile& operator=(LockFile&& other) noexcept;
    ~LockFile();

 private:
    LockFile(int descriptor, std::string path) : descriptor_(descriptor), path_(std::move(path)) {}
    int descriptor_ = -1;
    std::string path_;
};

/// Why a folder cannot hold a book: SQLite's locks do not work on network shares. Empty where it can.
std::string why_not_here(const std::string& folder);
/// The same by the number that statfs(2) gives for the kind of file system.
std::string why_not_on(long file_system_type);

}  // namespace spoilbook
