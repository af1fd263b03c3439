// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "model/unit/instant.h"

namespace spoilbook {

enum class EntryKind { change, undo, redo, import, sign, correct, settle, upgrade };

std::string kind_text(EntryKind kind);
/// Throws BookError for a text that is no kind.
EntryKind kind_from_text(const std::string& text);

/// How an entry is named: the device that wrote it and its number there. Text: "device:seq".
struct EntryName {
    std::string device;
    std::int64_t seq = 0;

    auto operator<=>(const EntryName&) const = default;
};

std::string name_text(const EntryName& name);

/// One entry of the journal (docs/journal.md has the order in which it is hashed).
struct Entry {
    EntryName name;
    Instant at;
    std::int64_t stamp_ms = 0;
    std::int64_t stamp_count = 0;
    std::string who, why;
    EntryKind kind = EntryKind::change;
    std::int64_t takes_back =
        0;  ///< for undo and redo: the seq, on this device, that is taken back or restored
    std::int64_t schema = 0;
    std::string changeset;                     ///< bytes as SQLite's session extension writes them
    std::vector<std::string> materials;        ///< digests stored with it, ascending
    std::map<std::string, std::int64_t> seen;  ///< highest seq held of each other device
    std::string prev, hash;                    ///< 32 bytes each
};

/// SHA-256 over every member but `hash`, length-prefixed, in the order of docs/journal.md.
std::string hash_of(const Entry& entry);

}  // namespace spoilbook
