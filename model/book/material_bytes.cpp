// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/material_bytes.h"

#include "model/book/change.h"
#include "model/book/inside.h"
#include "model/book/stored_file.h"

namespace spoilbook {

std::unique_ptr<ByteSource> material_bytes(const Book& book, const std::string& digest) {
    if (book.inside().files) return material_bytes(*book.inside().files, digest);
    return read_from(book, [&] { return stored_bytes(book, digest); });
}

Checked<std::string> keep_bytes(Change& change, const ByteSource& bytes) {
    // A change is only ever made by Book::change, and there it is this one.
    return dynamic_cast<OpenChange&>(change).keep_bytes(bytes);
}

std::string keep_packed(Change& change, const PackedFile& file) {
    return dynamic_cast<OpenChange&>(change).keep_packed(file);
}

}  // namespace spoilbook
