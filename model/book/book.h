// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "model/book/entry.h"
#include "model/record/kind.h"
#include "model/unit/checked.h"

namespace spoilbook {

class Change;

/// What every change says of itself. Time is handed in: nothing in the model reads a clock.
struct Act {
    EntryKind kind = EntryKind::change;
    Instant at;
    std::string who;  ///< name; empty: not said
    std::string why;  ///< reason; needed for a correction of something signed
};

/// One database file: one harbour's works. Reading is free; every change goes through `change`, the one
/// write path (docs/journal.md). Move-only; one thread at a time.
/// Throws BookError where the file, the disk or the schema is broken; a person's mistake is a Refusal.
class Book {
 public:
    /// Makes a new, empty book, mode 0600. Refused where the file exists or lies on a network share.
    static Checked<Book> create(const std::string& path, const std::string& device);
    /// Opens for reading only: any number may, also while one writes.
    static Checked<Book> open_to_read(const std::string& path);
    /// Opens as the one writer. Refused while another holds the lock (who, where, since when), where the
    /// file is not a book, is newer than this program, or lies on a network share.
    static Checked<Book> open_to_write(const std::string& path, const std::string& device,
                                       const Act& opened_by);
    /// A book in memory: the same tables without a file. For known-at and tests.
    static Book in_memory(const std::string& device);

    Book(Book&&) noexcept;
    Book& operator=(Book&&) noexcept;
    ~Book();

    /// Runs `body`, and lands all that it did as one journaled entry (or as many as it cut), durable when
    /// this returns; or, where body refuses or anything fails, nothing. A body that changes nothing lands
    /// nothing and answers no entry.
    Checked<std::optional<EntryName>> change(const Act& act,
                                             const std::function<Checked<Done>(Change&)>& body);

    [[nodiscard]] const std::string& path() const;
    [[nodiscard]] bool writable() const;

    /// All rows of a kind in the order they came; struck ones only where asked.
    [[nodiscard]] std::vector<Row> rows(const Kind& kind, bool struck_too = false) const;
    [[nodiscard]] std::optional<Row> row(const Kind& kind, const Id& id) const;
    /// The row with this label, within a parent where the kind's labels are unique only there.
    [[nodiscard]] std::optional<Row> labelled(const Kind& kind, const std::string& label,
                                              const std::optional<Id>& parent = std::nullopt) const;
    /// A row's label, or its id in hexadecimal where it has none.
    [[nodiscard]] std::string label_of(const Kind& kind, const Id& id) const;
    /// Bytes of one material by its digest (64 hexadecimal digits); nothing where the book has none.
    [[nodiscard]] std::optional<std::string> material(const std::string& digest) const;

    struct Inside;
    /// For the other files of this room.
    [[nodiscard]] Inside& inside() const { return *inside_; }

 private:
    explicit Book(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

/// The hand that writes, alive only inside Book::change.
class Change {
 public:
    virtual ~Change() = default;
    /// A new row; `values` in the kind's field order, references as ids.
    virtual Id insert(const Kind& kind, const std::vector<Value>& values) = 0;
    /// Sets one field. Refused where the row is covered by a signature and no reason was given.
    virtual Checked<Done> set(const Kind& kind, const Id& id, std::size_t field, const Value& value) = 0;
    /// Strikes a row out: it stays, and counts nowhere. The same rule for signed rows.
    virtual Checked<Done> strike(const Kind& kind, const Id& id) = 0;
    /// Stores bytes once under their SHA-256; answers the digest. Over 1 GB is refused.
    virtual Checked<std::string> keep(const std::string& bytes) = 0;
    /// The book as it stands inside this change.
    [[nodiscard]] virtual const Book& book() const = 0;
};

}  // namespace spoilbook
