// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>

#include "model/book/book.h"
#include "model/book/changeset.h"
#include "model/book/packed_file.h"
#include "model/book/signed_rows.h"

namespace spoilbook {

/// One import is as many entries as it needs, at most this many rows each (docs/journal.md).
constexpr int rows_per_entry = 50'000;

/// A change under way: between BEGIN and COMMIT of the one write path.
class OpenChange : public Change {
 public:
    OpenChange(Book& book, const Act& act);

    Id insert(const Kind& kind, const std::vector<Value>& values) override;
    Checked<Done> set(const Kind& kind, const Id& id, std::size_t field, const Value& value) override;
    Checked<Done> strike(const Kind& kind, const Id& id) override;
    Checked<std::string> keep(const std::string& bytes) override { return keep_bytes(HeldBytes(bytes)); }
    Checked<std::string> keep_bytes(const ByteSource& bytes);
    std::string keep_packed(const PackedFile& file);
    [[nodiscard]] const Book& book() const override { return book_; }

    /// Applies an earlier entry's changeset as it stands (undo, redo). False where it does not apply.
    bool apply(const std::string& changeset);
    void takes_back(std::int64_t seq) { takes_back_ = seq; }

    /// Writes what was recorded since the last entry as the next one; nothing where nothing was.
    void end_entry();
    [[nodiscard]] const std::optional<EntryName>& last_entry() const { return last_entry_; }

 private:
    void start_entry();
    void count_row();
    Id next_id();
    Checked<Done> allowed(const Kind& kind, const Row& row, std::optional<std::size_t> field);

    Book& book_;
    Act act_;
    std::optional<Recording> recording_;
    Entry entry_;  ///< the one being filled
    std::set<std::string> materials_;
    std::set<Id> made_here_;
    SignatureCover cover_;
    std::set<std::pair<Id, std::size_t>> filled_here_;  ///< fields that no signature covers
    std::int64_t takes_back_ = 0;
    std::int64_t ids_given_ = 0;
    int rows_in_entry_ = 0;
    bool corrects_ = false;
    std::optional<EntryName> last_entry_;
};

}  // namespace spoilbook
