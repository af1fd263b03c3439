// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "model/book/book.h"

namespace spoilbook {

/// Order in which entries are given: as they are replayed (stamp, then device), or newest first.
enum class EntryOrder { replay, newest_first };

/// Calls `each` for every entry until it answers false. Throws BookError where an entry does not read.
void for_each_entry(const Book& book, EntryOrder order, const std::function<bool(const Entry&)>& each);
std::optional<Entry> find_entry(const Book& book, const EntryName& name);
std::optional<Entry> newest_entry(const Book& book, const std::string& device);

struct DeviceHead {
    std::string device;
    std::int64_t entries = 0;                    ///< also the newest seq: a chain has no gaps
    std::int64_t stamp_ms = 0, stamp_count = 0;  ///< of its newest entry
    std::string head;                            ///< hash of its newest entry, hexadecimal
};

struct JournalState {
    std::int64_t entries = 0;
    std::vector<DeviceHead> devices;  ///< sorted
    std::string head;                 ///< SHA-256 over the sorted (device, newest hash), hexadecimal
};

JournalState journal_state(const Book& book);

/// Appends within the transaction that is open. For change.cpp only.
void append_entry(const Book& book, const Entry& entry);

}  // namespace spoilbook
