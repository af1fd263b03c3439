// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/entry.h"

#include <array>

#include "model/book/book_error.h"
#include "model/book/digest.h"

namespace spoilbook {

namespace {

constexpr std::array kind_names{"change", "undo", "redo", "import", "sign", "correct", "settle", "upgrade"};

}  // namespace

std::string kind_text(EntryKind kind) {
    return kind_names.at(static_cast<std::size_t>(kind));
}

EntryKind kind_from_text(const std::string& text) {
    for (std::size_t i = 0; i < kind_names.size(); ++i) {
        if (text == kind_names[i]) return static_cast<EntryKind>(i);
    }
    throw BookError("the journal holds an entry of the unknown kind \"" + text + "\"");
}

std::string name_text(const EntryName& name) {
    return name.device + ":" + std::to_string(name.seq);
}

std::string hash_of(const Entry& entry) {
    HashParts parts;
    parts.text(entry.name.device).number(entry.name.seq).number(entry.at.utc_ms);
    parts.number(entry.stamp_ms).number(entry.stamp_count);
    parts.text(entry.who).text(entry.why).text(kind_text(entry.kind)).number(entry.takes_back);
    parts.number(entry.schema).text(entry.changeset);
    parts.number(static_cast<std::int64_t>(entry.materials.size()));
    for (const auto& digest : entry.materials)
        parts.text(digest);
    parts.number(static_cast<std::int64_t>(entry.seen.size()));
    for (const auto& [device, seq] : entry.seen)
        parts.text(device).number(seq);
    return parts.text(entry.prev).sha256();
}

}  // namespace spoilbook
