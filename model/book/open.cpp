// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/open.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "model/book/book_error.h"
#include "model/book/inside.h"
#include "model/book/schema.h"
#include "model/book/schema_check.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

namespace fs = std::filesystem;

std::string folder_of(const std::string& path) {
    const auto parent = fs::absolute(path).parent_path();
    return parent.empty() ? "/" : parent.string();
}

void set_up(SQLite::Database& db, bool writer) {
    // A planted view or trigger must not be able to call functions, nor damage go unseen.
    sqlite3_db_config(db.getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    db.exec("PRAGMA trusted_schema = OFF");
    db.exec("PRAGMA cell_size_check = ON");
    db.exec("PRAGMA foreign_keys = ON");
    db.setBusyTimeout(5000);
    if (writer) db.exec("PRAGMA synchronous = FULL");
}

void make_tables(SQLite::Database& db) {
    SQLite::Transaction transaction(db);
    for (const auto& statement : create_statements())
        db.exec(statement);
    db.exec(fmt::format("PRAGMA application_id = {}", book_application_id));
    db.exec(fmt::format("PRAGMA user_version = {}", book_schema_version));
    transaction.commit();
}

std::int64_t pragma(SQLite::Database& db, const char* name) {
    return db.execAndGet(std::string("PRAGMA ") + name).getInt64();
}

Checked<Done> check_header(SQLite::Database& db, const std::string& path) {
    try {
        if (pragma(db, "application_id") != book_application_id) {
            return Refusal{"not-a-book", path, "this file is not a book",
                           "choose a file that ends in .sbook"};
        }
        const auto version = pragma(db, "user_version");
        if (version > book_schema_version) {
            return Refusal{
                "newer-book", path,
                fmt::format("the book was written by a newer program (tables {}, this one knows {})", version,
                            book_schema_version),
                "open it with that program, or a newer one"};
        }
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() != SQLITE_NOTADB) throw;
        return Refusal{"not-a-book", path, "this file is not a book", "choose a file that ends in .sbook"};
    }
    return Done{};
}

/// SQLite wants to write its index of the WAL even to read; where the folder forbids that and no WAL is
/// there, the file can be read as it stands.
std::unique_ptr<SQLite::Database> open_reader(const std::string& path) {
    try {
        auto db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READONLY);
        db->execAndGet("PRAGMA schema_version");
        return db;
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() != SQLITE_CANTOPEN || fs::exists(path + "-wal")) throw;
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

std::string holder_text(const Act& act) {
    return fmt::format("{} since {}", act.who.empty() ? "someone" : act.who,
                       instant_text(act.at, Zone::utc()));
}

Refusal no_such_book(const std::string& path) {
    return {"no-such-book", path, "there is no such book", "give the path of a file that ends in .sbook"};
}

}  // namespace

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

Checked<Book> Book::create(const std::string& path, const std::string& device) {
    if (const auto why = why_not_here(folder_of(path)); !why.empty()) {
        return Refusal{"wrong-place", path, "a book cannot be made here: " + why,
                       "make it on a disk of this machine"};
    }
    const int descriptor = ::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor < 0) {
        if (errno == EEXIST)
            return Refusal{"already-there", path, "there is a file of this name", "choose another name"};
        return Refusal{"cannot-write", path, std::string("the book cannot be made: ") + std::strerror(errno),
                       "choose a folder that you may write to"};
    }
    close(descriptor);
    auto lock = LockFile::take(path, device);
    if (!lock) return lock.refusals();
    auto inside = std::make_unique<Inside>();
    inside->path = path;
    inside->device = device;
    inside->writable = true;
    inside->lock.emplace(std::move(*lock));
    inside->db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE);
    inside->db->exec("PRAGMA journal_mode = WAL");
    set_up(*inside->db, true);
    make_tables(*inside->db);
    return Book(std::move(inside));
}

Checked<Book> Book::open_to_read(const std::string& path) {
    if (!fs::is_regular_file(path)) return no_such_book(path);
    auto inside = std::make_unique<Inside>();
    inside->path = path;
    try {
        inside->db = open_reader(path);
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() == SQLITE_NOTADB)
            return Refusal{"not-a-book", path, "this file is not a book",
                           "choose a file that ends in .sbook"};
        throw BookError(path + ": " + error.what());
    }
    set_up(*inside->db, false);
    if (auto header = check_header(*inside->db, path); !header) return header.refusals();
    return Book(std::move(inside));
}

Checked<Book> Book::open_to_write(const std::string& path, const std::string& device, const Act& opened_by) {
    if (!fs::is_regular_file(path)) return no_such_book(path);
    if (const auto why = why_not_here(folder_of(path)); !why.empty()) {
        return Refusal{"wrong-place", path, "the book cannot be written here: " + why,
                       "move it to a disk of this machine"};
    }
    if (access(path.c_str(), W_OK) != 0) {
        return Refusal{"read-only", path, "the book's file may not be written",
                       "change its permissions, or only read"};
    }
    auto lock = LockFile::take(path, holder_text(opened_by));
    if (!lock) return lock.refusals();
    auto inside = std::make_unique<Inside>();
    inside->path = path;
    inside->device = device;
    inside->writable = true;
    inside->lock.emplace(std::move(*lock));
    inside->db = std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE);
    set_up(*inside->db, true);
    if (auto header = check_header(*inside->db, path); !header) return header.refusals();
    inside->db->exec("PRAGMA journal_mode = WAL");  // a backup comes without
    Book book(std::move(inside));
    if (const auto odd = odd_table(book)) {
        return Refusal{"changed-from-outside", path, "the book's tables were changed from outside: " + *odd,
                       "run sbk journal --check, and go back to a backup"};
    }
    return book;
}

Book Book::in_memory(const std::string& device) {
    auto inside = std::make_unique<Inside>();
    inside->device = device;
    inside->writable = true;
    inside->db = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    set_up(*inside->db, true);
    make_tables(*inside->db);
    return Book(std::move(inside));
}

Checked<Done> make_book(const std::string& path, const std::string& device,
                        const std::function<Checked<Done>(Book&)>& fill) {
    if (fs::exists(path))
        return Refusal{"already-there", path, "there is a file of this name", "choose another name"};
    const std::string part = path + "-part";
    const auto clear = [&] {
        for (const char* tail : {"", "-wal", "-shm", "-lock"})
            fs::remove(part + tail);
    };
    clear();
    Checked<Done> filled = Done{};
    {
        auto book = Book::create(part, device);
        if (!book) return book.refusals();
        filled = fill(*book);
    }
    if (filled && link(part.c_str(), path.c_str()) != 0) {
        filled = Refusal{"cannot-write", path,
                         std::string("the book cannot be put in its place: ") + std::strerror(errno),
                         "choose another name"};
    }
    clear();
    return filled;
}

}  // namespace spoilbook
