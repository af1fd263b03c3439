// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/backup.h"

#include <SQLiteCpp/Backup.h>
#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>

#include "model/book/file_name.h"
#include "model/book/inside.h"
#include "model/book/journal_check.h"
#include "model/book/part_folder.h"
#include "model/book/snapshot.h"

namespace spoilbook {

namespace {

// A step is so short that it can be stopped; the rest of the time is the check's.
constexpr int pages_at_once = 512;
constexpr double copied_share = 0.5;

Refusal not_made(const std::string& to, const std::string& why) {
    return {"cannot-write", to, "the backup cannot be made: " + why,
            "look for room on the disk, and for a folder that you may write to"};
}

Refusal stopped(const std::string& to) {
    return {"stopped", to, "the copying was stopped", "nothing was left there"};
}

Checked<Done> copy(const Book& book, SQLite::Database& into, const std::string& to, const GoingOn& going_on) {
    // The book as it is at this moment: without it every write of another begins the copy anew.
    const Snapshot still(book);
    SQLite::Backup backup(into, *book.inside().db);
    int state = SQLITE_OK;
    while (state != SQLITE_DONE) {
        state = backup.executeStep(pages_at_once);
        if (state != SQLITE_OK && state != SQLITE_DONE) return not_made(to, "the book is being written");
        const int whole = std::max(1, backup.getTotalPageCount());
        const double share = 1 - double(backup.getRemainingPageCount()) / whole;
        if (going_on && !going_on(copied_share * share)) return stopped(to);
    }
    return Done{};
}

Checked<Done> copy_and_check(const Book& book, const std::string& part, const std::string& to,
                             const GoingOn& going_on) {
    try {
        SQLite::Database copied(part, SQLite::OPEN_READWRITE);
        if (auto done = copy(book, copied, to, going_on); !done) return done;
        // One plain file: a backup is carried about, and must not need a second file beside it.
        copied.exec("PRAGMA journal_mode = DELETE");
    } catch (const SQLite::Exception& error) {
        return not_made(to, error.what());
    }
    auto again = Book::open_to_read(part);
    if (!again) return again.refusals();
    if (const auto bad = check_journal(*again)) {
        return Refusal{"backup-not-intact", to,
                       "the copy is not intact: " + bad->table + " " + bad->id + ": " + bad->what,
                       "check the journal of the book itself"};
    }
    if (going_on && !going_on(1)) return stopped(to);
    return Done{};
}

}  // namespace

Checked<Done> back_up(const Book& book, const std::string& to, const GoingOn& going_on) {
    std::error_code unknown;
    if (std::filesystem::exists(std::filesystem::symlink_status(to, unknown)))
        return Refusal{"already-there", to, "there is a file of this name", "choose another name"};
    const auto part = PartFolder::beside(to);
    if (!part) return not_made(to, part.refusals().front().what);
    const int descriptor = open(part->file().c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor < 0) return not_made(to, std::strerror(errno));
    close(descriptor);
    if (auto done = copy_and_check(book, part->file(), to, going_on); !done) return done;
    return take_the_name(part->file(), to);
}

}  // namespace spoilbook
