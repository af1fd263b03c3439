// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/backup.h"

#include <SQLiteCpp/Backup.h>
#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "model/book/file_name.h"
#include "model/book/inside.h"
#include "model/book/journal_check.h"
#include "model/book/part_folder.h"

namespace spoilbook {

namespace {

Refusal not_made(const std::string& to, const std::string& why) {
    return {"cannot-write", to, "the backup cannot be made: " + why,
            "look for room on the disk, and for a folder that you may write to"};
}

Checked<Done> copy_and_check(const Book& book, const std::string& part, const std::string& to) {
    try {
        SQLite::Database copy(part, SQLite::OPEN_READWRITE);
        {
            SQLite::Backup backup(copy, *book.inside().db);
            if (backup.executeStep(-1) != SQLITE_DONE) return not_made(to, "the book is being written");
        }
        // One plain file: a backup is carried about, and must not need a second file beside it.
        copy.exec("PRAGMA journal_mode = DELETE");
    } catch (const SQLite::Exception& error) {
        return not_made(to, error.what());
    }
    auto again = Book::open_to_read(part);
    if (!again) return again.refusals();
    if (const auto bad = check_journal(*again)) {
        return Refusal{"backup-not-intact", to,
                       "the copy is not intact: " + bad->table + " " + bad->id + ": " + bad->what,
                       "run sbk journal --check on the book itself"};
    }
    return Done{};
}

}  // namespace

Checked<Done> back_up(const Book& book, const std::string& to) {
    std::error_code unknown;
    if (std::filesystem::exists(std::filesystem::symlink_status(to, unknown)))
        return Refusal{"already-there", to, "there is a file of this name", "choose another name"};
    const auto part = PartFolder::beside(to);
    if (!part) return not_made(to, part.refusals().front().what);
    const int descriptor = open(part->file().c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor < 0) return not_made(to, std::strerror(errno));
    close(descriptor);
    if (auto done = copy_and_check(book, part->file(), to); !done) return done;
    return take_the_name(part->file(), to);
}

}  // namespace spoilbook
