// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

struct Signature {
    Id shift_id;
    std::string shift, signed_by;
};

/// The signature that covers a row, as far as `field` goes (nothing: the whole row). A signed shift covers
/// its own row, its stations, tallies, crew, delays and soundings, the loads whose loading ended in it, their
/// trips and releases. A field that was blank when the shift was signed is not covered (trust.md).
std::optional<Signature> signature_over(const Book& book, const Kind& kind, const Row& row,
                                        std::optional<std::size_t> field);

/// The signed shift that covers a row, whatever was blank when.
std::optional<Signature> signed_shift_of(const Book& book, const Kind& kind, const Row& row);

/// The newest entry that put a shift's signature there.
std::optional<EntryName> signing_entry(const Book& book, const Id& shift);

}  // namespace spoilbook
