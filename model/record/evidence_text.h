// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace spoilbook {

/// A file that the book keeps as evidence, as the text of a record names it: "NAME sha256:DIGEST".
struct EvidenceFile {
    std::string name;
    std::string digest;  ///< 64 lower-case hexadecimal digits

    /// ".pdf": the ending of its name, where that is a plain one of letters and digits; else empty.
    [[nodiscard]] std::string ending() const;
    bool operator==(const EvidenceFile&) const = default;
};

/// The kept files that a text of evidence names, in order. Its pieces stand apart by "; ".
std::vector<EvidenceFile> evidence_files(const std::string& text);
/// The text with one more file; as it was where it names that file already.
std::string with_evidence_file(const std::string& text, const EvidenceFile& file);
/// What the text says beside the names of files and their digests: for reading.
std::string evidence_words(const std::string& text);

}  // namespace spoilbook
