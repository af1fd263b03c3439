// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/open.h"

#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>

#include "model/book/file_name.h"
#include "model/book/inside.h"
#include "model/book/schema.h"
#include "model/book/schema_check.h"
#include "model/book/set_up.h"
#include "model/book/upgrade.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

namespace fs = std::filesystem;

std::int64_t pragma(SQLite::Database& db, const char* name) {
    return db.execAndGet(std::string("PRAGMA ") + name).getInt64();
}

Refusal not_a_book(const std::string& path) {
    return {"not-a-book", path, "this file is not a book", "choose a file that ends in .sbook"};
}

Checked<Done> check_header(SQLite::Database& db, const std::string& path) {
    if (pragma(db, "application_id") != book_application_id) return not_a_book(path);
    const auto version = pragma(db, "user_version");
    if (version <= book_schema_version) return Done{};
    return Refusal{"newer-book", path,
                   fmt::format("the book was written by a newer program (tables {}, this one knows {})",
                               version, book_schema_version),
                   "open it with that program, or a newer one"};
}

/// SQLite wants to write its index of the WAL even to read; where the folder or the disk forbids that and
/// nothing waits in a WAL, the file can be read as it stands.
std::unique_ptr<SQLite::Database> open_reader(const std::string& path) {
    try {
        auto db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READONLY);
        db->execAndGet("PRAGMA schema_version");
        return db;
    } catch (const SQLite::Exception& error) {
        const int code = error.getErrorCode() & 0xff;
        std::error_code none;
        const auto waiting = fs::file_size(path + "-wal", none);
        if ((code != SQLITE_CANTOPEN && code != SQLITE_READONLY) || (!none && waiting > 0)) throw;
    }
    std::string uri = "file:";
    for (const char c : path) {
        if (c == '%' || c == '?' || c == '#')
            uri += fmt::format("%{:02X}", static_cast<unsigned>(c));
        else
            uri += c;
    }
    return std::make_unique<SQLite::Database>(uri + "?immutable=1", SQLite::OPEN_READONLY | SQLite::OPEN_URI);
}

Refusal no_such_book(const std::string& path) {
    return {"no-such-book", path, "there is no such book", "give the path of a file that ends in .sbook"};
}

Checked<Done> check_place(const std::string& path) {
    if (const auto why = why_not_here(folder_of(path)); !why.empty()) {
        return Refusal{"wrong-place", path, "the book cannot be written here: " + why,
                       "move it to a disk of this machine"};
    }
    if (access(path.c_str(), W_OK) != 0) {
        return Refusal{"read-only", path, "the book's file may not be written",
                       "change its permissions, or only read"};
    }
    return Done{};
}

/// Runs `open` on the file; a file that is no database is refused, what else SQLite says is thrown.
Checked<Done> opening(const std::string& path, const std::function<Checked<Done>()>& open) {
    try {
        return open();
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() == SQLITE_NOTADB) return not_a_book(path);
        throw BookError(path + ": " + error.what());
    }
}

}  // namespace

void set_up(SQLite::Database& db, bool writer) {
    // A planted view or trigger must not be able to call functions, nor damage go unseen.
    sqlite3_db_config(db.getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    db.exec("PRAGMA trusted_schema = OFF");
    db.exec("PRAGMA cell_size_check = ON");
    db.exec("PRAGMA foreign_keys = ON");
    db.setBusyTimeout(5000);
    if (writer) db.exec("PRAGMA synchronous = FULL");
}

Checked<Done> check_device(const std::string& device) {
    if (!device.empty()) return Done{};
    return Refusal{"no-device", "", "this machine has no name to write under", "give it one"};
}

Book::Book(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

const std::string& Book::path() const {
    return inside_->path;
}
bool Book::writable() const {
    return inside_->writable;
}

Checked<Book> Book::open_to_read(const std::string& path) {
    if (!fs::is_regular_file(path)) return no_such_book(path);
    auto inside = std::make_unique<Inside>();
    inside->path = real_path(path);
    auto opened = opening(path, [&] {
        inside->db = open_reader(inside->path);
        set_up(*inside->db, false);
        auto header = check_header(*inside->db, path);
        if (header && is_older(*inside->db)) inside->db = upgraded_copy(std::move(inside->db));
        return header;
    });
    if (!opened) return opened.refusals();
    return Book(std::move(inside));
}

Checked<Book> Book::open_to_write(const std::string& path, const std::string& device, const Act& opened_by) {
    if (!fs::is_regular_file(path)) return no_such_book(path);
    if (auto named = check_device(device); !named) return named.refusals();
    if (auto may = check_place(path); !may) return may.refusals();
    auto inside = std::make_unique<Inside>();
    inside->path = real_path(path);
    auto lock = LockFile::take(
        inside->path, fmt::format("{} on {} since {}", opened_by.who.empty() ? "someone" : opened_by.who,
                                  device, instant_text(opened_by.at, Zone::utc())));
    if (!lock) return lock.refusals();
    inside->device = device;
    inside->lock.emplace(std::move(*lock));
    auto opened = opening(path, [&]() -> Checked<Done> {
        inside->db = std::make_unique<SQLite::Database>(inside->path, SQLite::OPEN_READWRITE);
        if (auto header = check_header(*inside->db, path); !header) return header;
        set_up(*inside->db, true);
        inside->db->exec("PRAGMA journal_mode = WAL");  // a backup comes without
        return Done{};
    });
    if (!opened) return opened.refusals();
    inside->writable = true;
    Book book(std::move(inside));
    if (auto done = opening(path, [&] { return upgrade(book); }); !done) return done.refusals();
    if (const auto odd = odd_table(book)) {
        return Refusal{"changed-from-outside", path,
                       "the book's tables were changed from outside: " + odd->name + ": " + odd->what,
                       "check its journal, and go back to a backup"};
    }
    return book;
}

}  // namespace spoilbook
