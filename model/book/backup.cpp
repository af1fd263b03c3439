// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/backup.h"

#include <SQLiteCpp/Backup.h>
#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "model/book/inside.h"
#include "model/book/journal_check.h"

namespace spoilbook {

namespace {

Checked<Done> copy_and_check(const Book& book, const std::string& part) {
    {
        SQLite::Database copy(part, SQLite::OPEN_READWRITE);
        SQLite::Backup backup(copy, *book.inside().db);
        backup.executeStep(-1);
        // One plain file: a backup is carried about, and must not need a second file beside it.
        copy.exec("PRAGMA journal_mode = DELETE");
    }
    auto again = Book::open_to_read(part);
    if (!again) return again.refusals();
    if (const auto bad = check_journal(*again)) {
        return Refusal{"backup-not-intact", part,
                       "the copy is not intact: " + bad->table + " " + bad->id + ": " + bad->what,
                       "run sbk journal --check on the book itself"};
    }
    return Done{};
}

}  // namespace

Checked<Done> back_up(const Book& book, const std::string& to) {
    namespace fs = std::filesystem;
    if (fs::exists(to))
        return Refusal{"already-there", to, "there is a file of this name", "choose another name"};
    const std::string part = to + "-part";
    fs::remove(part);
    const int descriptor = open(part.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor < 0) {
        return Refusal{"cannot-write", to, std::string("the backup cannot be made: ") + std::strerror(errno),
                       "choose a folder that you may write to"};
    }
    close(descriptor);
    Checked<Done> done = Done{};
    try {
        done = copy_and_check(book, part);
    } catch (const SQLite::Exception& error) {
        done = Refusal{"cannot-write", to, std::string("the backup cannot be made: ") + error.what(),
                       "look for room on the disk"};
    }
    if (done && link(part.c_str(), to.c_str()) != 0) {
        done = Refusal{"cannot-write", to,
                       std::string("the backup cannot be put in its place: ") + std::strerror(errno),
                       "choose another name"};
    }
    fs::remove(part);
    return done;
}

}  // namespace spoilbook
