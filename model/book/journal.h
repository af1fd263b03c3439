// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <set>

#include "model/book/book.h"

namespace spoilbook {

/// Order in which entries are given: as they are replayed (stamp, then device), or newest first.
enum class EntryOrder { replay, newest_first };

/// Calls `each` for every entry until it answers false. Throws BookError where an entry does not read or its
/// hash does not fit what it holds: an altered changeset must not reach SQLite (it could loop for ever).
void for_each_entry(const Book& book, EntryOrder order, const std::function<bool(const Entry&)>& each);
/// The same for the entries of one device, newest first.
void for_each_entry_by(const Book& book, const std::string& device,
                       const std::function<bool(const Entry&)>& each);
/// For the check, which says itself what is wrong: in replay order, without comparing the hash.
void for_each_entry_unproved(const Book& book, const std::function<bool(const Entry&)>& each);
std::optional<Entry> find_entry(const Book& book, const EntryName& name);

struct DeviceHead {
    std::string device;
    std::int64_t entries = 0;                    ///< also the newest seq: a chain has no gaps
    std::int64_t stamp_ms = 0, stamp_count = 0;  ///< of its newest entry
    std::string hash;                            ///< of its newest entry, 32 bytes
    std::string head;                            ///< the same in hexadecimal
};

struct JournalState {
    std::int64_t entries = 0;
    std::vector<DeviceHead> devices;  ///< sorted
    std::string head;                 ///< SHA-256 over the sorted (device, newest hash), hexadecimal
};

JournalState journal_state(const Book& book);

/// Stamps (ms) of the entries of kind import: rows that came with a folder carry one in their id.
std::set<std::int64_t> import_stamps_ms(const Book& book);

/// Appends within the transaction that is open. For change.cpp only.
void append_entry(const Book& book, const Entry& entry);

}  // namespace spoilbook
