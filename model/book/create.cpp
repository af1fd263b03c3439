// SPDX-License-Identifier: GPL-3.0-or-later
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "model/book/file_name.h"
#include "model/book/inside.h"
#include "model/book/open.h"
#include "model/book/part_folder.h"
#include "model/book/schema.h"
#include "model/book/set_up.h"

namespace spoilbook {

namespace {

/// Takes a book and what lies beside it away again, unless it was kept.
class UnlessKept {
 public:
    explicit UnlessKept(std::string path) : path_(std::move(path)) {}
    ~UnlessKept() {
        if (!kept_) clear();
    }
    UnlessKept(const UnlessKept&) = delete;
    UnlessKept& operator=(const UnlessKept&) = delete;
    void keep() { kept_ = true; }

 private:
    void clear() const {
        std::error_code ignored;
        for (const char* tail : {"", "-wal", "-shm", "-lock"})
            std::filesystem::remove(path_ + tail, ignored);
    }
    std::string path_;
    bool kept_ = false;
};

void make_tables(SQLite::Database& db) {
    SQLite::Transaction transaction(db);
    for (const auto& statement : create_statements())
        db.exec(statement);
    db.exec(fmt::format("PRAGMA application_id = {}", book_application_id));
    db.exec(fmt::format("PRAGMA user_version = {}", book_schema_version));
    transaction.commit();
}

Refusal cannot_make(const std::string& path) {
    if (errno == EEXIST)
        return {"already-there", path, "there is a file of this name", "choose another name"};
    return {"cannot-write", path, std::string("the book cannot be made: ") + std::strerror(errno),
            "choose a folder that you may write to"};
}

}  // namespace

Checked<Book> Book::create(const std::string& path, const std::string& device) {
    if (auto named = check_device(device); !named) return named.refusals();
    if (const auto why = why_not_here(folder_of(path)); !why.empty()) {
        return Refusal{"wrong-place", path, "a book cannot be made here: " + why,
                       "make it on a disk of this machine"};
    }
    const int descriptor = ::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor < 0) return cannot_make(path);
    close(descriptor);
    UnlessKept file(path);
    auto inside = std::make_unique<Inside>();
    inside->path = real_path(path);
    auto lock = LockFile::take(inside->path, "someone on " + device);
    if (!lock) return lock.refusals();
    inside->device = device;
    inside->writable = true;
    inside->lock.emplace(std::move(*lock));
    try {
        inside->db = std::make_unique<SQLite::Database>(inside->path, SQLite::OPEN_READWRITE);
        inside->db->exec("PRAGMA journal_mode = WAL");
        set_up(*inside->db, true);
        make_tables(*inside->db);
    } catch (const SQLite::Exception& error) {
        throw BookError(path + ": the book was not made: " + error.what());
    }
    file.keep();
    return Book(std::move(inside));
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
    std::error_code unknown;
    if (std::filesystem::exists(std::filesystem::symlink_status(path, unknown)))
        return Refusal{"already-there", path, "there is a file of this name", "choose another name"};
    const auto part = PartFolder::beside(path);
    if (!part) return part.refusals();
    {
        auto book = Book::create(part->file(), device);
        if (!book) return book.refusals();
        if (auto filled = fill(*book); !filled) return filled;
    }
    return take_the_name(part->file(), path);
}

}  // namespace spoilbook
