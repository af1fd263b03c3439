// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_lines.h"

#include <algorithm>

#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

std::string narrow(std::string_view bytes, std::size_t low_byte) {
    std::string text;
    text.reserve(bytes.size() / 2);
    for (std::size_t i = 2; i + 1 < bytes.size(); i += 2)
        text += bytes[i + 1 - low_byte] == '\0' ? bytes[i + low_byte] : '?';
    return text;
}

std::string_view bare(std::string_view field) {
    const auto blank = [](char c) { return c == ' ' || c == '\t'; };
    while (!field.empty() && blank(field.front()))
        field.remove_prefix(1);
    while (!field.empty() && blank(field.back()))
        field.remove_suffix(1);
    return field;
}

std::string_view unquoted(std::string_view field) {
    field = bare(field);
    if (field.size() >= 2 && field.front() == '"' && field.back() == '"')
        return bare(field.substr(1, field.size() - 2));
    return field;
}

void split_blanks(std::string_view line, std::vector<std::string_view>& fields) {
    std::size_t at = 0;
    while (at < line.size()) {
        const std::size_t begin = line.find_first_not_of(" \t", at);
        if (begin == std::string_view::npos) return;
        at = std::min(line.find_first_of(" \t", begin), line.size());
        fields.push_back(unquoted(line.substr(begin, at - begin)));
    }
}

bool is_utf8(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        const auto c = static_cast<unsigned char>(text[i]);
        const std::size_t more = c < 0x80 ? 0 : c >> 5U == 6 ? 1 : c >> 4U == 14 ? 2 : c >> 3U == 30 ? 3 : 9;
        if (more == 9 || i + more >= text.size()) return false;
        for (std::size_t k = 1; k <= more; ++k) {
            if ((static_cast<unsigned char>(text[i + k]) & 0xC0U) != 0x80U) return false;
        }
        i += more + 1;
    }
    return true;
}

}  // namespace

std::string logger_text(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xFE")) return narrow(bytes, 0);
    if (bytes.starts_with("\xFE\xFF")) return narrow(bytes, 1);
    if (bytes.starts_with("\xEF\xBB\xBF")) bytes.remove_prefix(3);
    return std::string(bytes);
}

bool LoggerLines::next(std::string_view& line) {
    if (rest_.empty()) return false;
    const std::size_t end = std::min(rest_.find('\n'), rest_.size());
    line = rest_.substr(0, end);
    rest_.remove_prefix(std::min(end + 1, rest_.size()));
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    ++number_;
    return true;
}

void split_line(std::string_view line, char delimiter, std::vector<std::string_view>& fields) {
    fields.clear();
    if (delimiter == ' ') return split_blanks(line, fields);
    std::size_t begin = 0;
    bool quoted = false;
    for (std::size_t i = 0; i <= line.size(); ++i) {
        if (i < line.size() && line[i] == '"') quoted = !quoted;
        if (i < line.size() && (line[i] != delimiter || quoted)) continue;
        fields.push_back(unquoted(line.substr(begin, i - begin)));
        begin = i + 1;
    }
}

std::optional<double> logger_number(std::string_view text, char decimal) {
    if (!text.empty() && text.front() == '+') text.remove_prefix(1);
    if (decimal == '.') return parse_number(text);
    if (text.find('.') != std::string_view::npos) return std::nullopt;
    std::string pointed(text);
    std::replace(pointed.begin(), pointed.end(), ',', '.');
    return parse_number(pointed);
}

std::string shown_text(std::string_view text) {
    if (is_utf8(text)) return std::string(text);
    std::string shown;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (byte < 0x80) {
            shown += c;
        } else {
            shown += static_cast<char>(0xC0U | (byte >> 6U));
            shown += static_cast<char>(0x80U | (byte & 0x3FU));
        }
    }
    return shown;
}

}  // namespace spoilbook
