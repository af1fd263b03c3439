// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/book/book.h"
#include "model/book/row_entries.h"

namespace spoilbook {

struct Signature {
    Id shift_id;
    std::string shift, signed_by;
};

/// The signed shift that covers a row, whatever was blank when: its own row, its stations, tallies, crew,
/// delays and soundings, the loads whose loading ended in it, their trips and releases (docs/journal.md).
std::optional<Signature> signed_shift_of(const Book& book, const Kind& of, const Row& row);

/// The newest entry that put the signature of a signed shift there; nothing where the change that is open
/// puts it there, or the shift is not signed.
std::optional<EntryPlace> signing_of(const Book& book, const Id& shift);

/// Whether an entry came after a signature. What came in the same import did not, however it was cut.
bool is_after(const EntryPlace& entry, const EntryPlace& signing);

/// Which fields a signature covers: those that held something when the shift was signed. Keeps what it
/// found, for one change or one refusal: the journal must not grow meanwhile.
class SignatureCover {
 public:
    explicit SignatureCover(const Book& book) : book_(book) {}
    /// The signature that covers a row, as far as `field` goes (nothing: the whole row).
    std::optional<Signature> over(const Kind& of, const Row& row, std::optional<std::size_t> field);

 private:
    std::optional<EntryPlace> signing(const Id& shift);

    const Book& book_;
    std::map<Id, std::optional<EntryPlace>> signings_;
};

}  // namespace spoilbook
