// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/record/evidence_text.h"

#include <algorithm>
#include <optional>

namespace spoilbook {

namespace {

const std::string between = "; ";
const std::string mark = " sha256:";
constexpr std::size_t digits = 64;

std::vector<std::string> pieces_of(const std::string& text) {
    std::vector<std::string> pieces;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(between, at), text.size());
        pieces.push_back(text.substr(at, end - at));
        at = end + between.size();
    }
    return pieces;
}

std::optional<EvidenceFile> file_of(const std::string& piece) {
    const std::size_t at = piece.rfind(mark);
    if (at == std::string::npos || at == 0 || piece.size() != at + mark.size() + digits) return std::nullopt;
    EvidenceFile file{piece.substr(0, at), piece.substr(at + mark.size())};
    if (file.digest.find_first_not_of("0123456789abcdef") != std::string::npos) return std::nullopt;
    return file;
}

}  // namespace

std::string EvidenceFile::ending() const {
    constexpr std::size_t longest = 8;
    const auto at = name.rfind('.');
    if (at == std::string::npos || name.size() - at - 1 > longest || at + 1 == name.size()) return "";
    const auto plain = [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    };
    return std::all_of(name.begin() + static_cast<std::ptrdiff_t>(at) + 1, name.end(), plain)
               ? name.substr(at)
               : "";
}

std::vector<EvidenceFile> evidence_files(const std::string& text) {
    std::vector<EvidenceFile> files;
    for (const auto& piece : pieces_of(text)) {
        if (const auto file = file_of(piece)) files.push_back(*file);
    }
    return files;
}

std::string with_evidence_file(const std::string& text, const EvidenceFile& file) {
    const auto there = evidence_files(text);
    if (std::find(there.begin(), there.end(), file) != there.end()) return text;
    return text + (text.empty() ? "" : between) + file.name + mark + file.digest;
}

std::string evidence_words(const std::string& text) {
    std::string words;
    for (const auto& piece : pieces_of(text)) {
        const auto file = file_of(piece);
        words += (words.empty() ? "" : between) + (file ? file->name : piece);
    }
    return words;
}

}  // namespace spoilbook
