// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/write.h"

#include <sqlite3.h>

#include "model/book/book_error.h"
#include "model/book/inside.h"
#include "model/book/journal.h"

namespace spoilbook {

namespace {

/// Rolls back unless committed, whatever way the scope is left.
class OpenTransaction {
 public:
    explicit OpenTransaction(SQLite::Database& db) : db_(db) { db_.exec("BEGIN IMMEDIATE"); }
    ~OpenTransaction() {
        if (over_) return;
        // After a disk error SQLite may have rolled back by itself; then there is nothing left to do.
        if (sqlite3_get_autocommit(db_.getHandle()) == 0) db_.tryExec("ROLLBACK");
    }
    OpenTransaction(const OpenTransaction&) = delete;
    OpenTransaction& operator=(const OpenTransaction&) = delete;

    void commit() {
        db_.exec("COMMIT");
        over_ = true;
    }

 private:
    SQLite::Database& db_;
    bool over_ = false;
};

bool is_there(const Book& book, const EntryName& name) {
    try {
        return find_entry(book, name).has_value();
    } catch (const BookError&) {
        return false;  // the disk does not answer: nobody knows
    }
}

/// COMMIT, which may fail and have written all the same: what the journal holds decides.
void commit(Book& book, OpenTransaction& transaction, const OpenChange& change) {
    try {
        transaction.commit();
        return;
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() == SQLITE_CONSTRAINT) throw;
        const bool over = sqlite3_get_autocommit(book.inside().db->getHandle()) != 0;
        const std::string why = book.path() + ": the disk failed while the change was being written: ";
        if (!over) throw BookError(why + error.what() + "; nothing was written");
        const auto& name = change.last_entry();
        if (name && is_there(book, *name)) return;
        throw BookError(why + error.what() +
                        "; look in the journal whether it is there before doing it again");
    }
}

}  // namespace

Checked<std::optional<EntryName>> write(Book& book, const Act& act,
                                        const std::function<Checked<Done>(OpenChange&)>& body) {
    if (!book.writable()) {
        return Refusal{"read-only", book.path(), "the book is open for reading only", "open it to write"};
    }
    try {
        OpenTransaction transaction(*book.inside().db);
        OpenChange change(book, act);
        if (auto done = body(change); !done) return done.refusals();
        change.end_entry();
        commit(book, transaction, change);
        return change.last_entry();
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() == SQLITE_CONSTRAINT) {
            return Refusal{"rule-of-the-book", book.path(), "a value is outside what the book takes",
                           "look at the ranges of the values, and at what they refer to"};
        }
        throw BookError(book.path() + ": nothing was written: " + error.what());
    }
}

}  // namespace spoilbook
