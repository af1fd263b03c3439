// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_lines.h"

#include <algorithm>
#include <cctype>

#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

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
        const auto word = line.substr(begin, at - begin);
        if (!fields.empty() && is_half_day(word)) {  // of the clock before it
            const auto* from = fields.back().data();
            fields.back() = {from, static_cast<std::size_t>(word.data() + word.size() - from)};
            continue;
        }
        fields.push_back(unquoted(line.substr(begin, at - begin)));
    }
}

/// Where a field that may have quotes ends: at the next delimiter outside them, or with the line.
std::size_t end_of_quoted(std::string_view line, char delimiter, std::size_t begin) {
    bool quoted = false;
    for (std::size_t i = begin; i < line.size(); ++i) {
        if (line[i] == '"') quoted = !quoted;
        if (line[i] == delimiter && !quoted) return i;
    }
    return line.size();
}

/// Whether a quoted field goes on past the end of the line. A quote opens a field only at its beginning.
bool leaves_open(std::string_view line, bool open) {
    if (line.find('"') == std::string_view::npos) return open;
    char before = ',';
    for (const char c : line) {
        if (open) {
            open = c != '"';
        } else if (c == '"') {
            open = before == ',' || before == ';' || before == '\t' || before == '|' || before == '"';
        }
        if (c != ' ') before = c;
    }
    return open;
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

/// What was read goes in large pieces, so that what is left is moved seldom.
void LoggerLines::forget_past() {
    if (at_ < 100'000 || 2 * at_ < text_.size()) return;
    text_.erase(0, at_);
    at_ = 0;
}

bool LoggerLines::next(std::string_view& line) {
    forget_past();
    if (at_ == text_.size() && !source_.more(text_)) return false;
    number_ = next_number_;
    const std::size_t end = end_of_line();
    line = std::string_view(text_).substr(at_, end - at_);
    at_ = std::min(end + 1, text_.size());
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    return true;
}

/// Where the line that goes on at `from` ends: at its LF, or behind the last byte of all.
std::size_t LoggerLines::line_end(std::size_t from) {
    for (std::size_t end = text_.find('\n', from);; end = text_.find('\n', from)) {
        if (end != std::string::npos) return end;
        from = text_.size();
        if (!source_.more(text_)) return from;
    }
}

std::size_t LoggerLines::end_of_line() {
    const auto span = [&](std::size_t from, std::size_t to) {
        return std::string_view(text_).substr(from, to - from);
    };
    const std::size_t first_end = line_end(at_);
    ++next_number_;
    bool open = leaves_open(span(at_, first_end), false);
    std::size_t end = first_end;
    for (std::size_t more = 1; open && more <= 20 && end < text_.size(); ++more) {
        const std::size_t next = line_end(end + 1);
        open = leaves_open(span(end + 1, next), true);
        end = next;
        if (open) continue;
        next_number_ += more;
        return end;
    }
    return first_end;  // a quote that never closes is a mark like any other
}

void split_line(std::string_view line, char delimiter, std::vector<std::string_view>& fields) {
    fields.clear();
    if (delimiter == ' ') return split_blanks(line, fields);
    const bool quotes = line.find('"') != std::string_view::npos;
    for (std::size_t begin = 0; begin <= line.size();) {
        const std::size_t end = quotes ? end_of_quoted(line, delimiter, begin)
                                       : std::min(line.find(delimiter, begin), line.size());
        fields.push_back(unquoted(line.substr(begin, end - begin)));
        begin = end + 1;
    }
}

void split_heads(std::string_view line, char delimiter, std::vector<std::string_view>& fields) {
    split_line(line, delimiter, fields);
    if (fields.size() > 1 && fields.front() == "#") fields.erase(fields.begin());
}

std::optional<double> logger_number(std::string_view text, char decimal) {
    if (!text.empty() && text.front() == '+') text.remove_prefix(1);
    if (decimal == '.') return parse_number(text);
    if (text.find('.') != std::string_view::npos) return std::nullopt;
    std::string pointed(text);
    std::replace(pointed.begin(), pointed.end(), ',', '.');
    return parse_number(pointed);
}

std::optional<double> grouped_number(std::string_view text, char decimal) {
    const char mark = decimal == ',' ? '.' : ',';
    const std::size_t end = std::min(text.find(decimal), text.size());
    const std::size_t first = text.find(mark);
    if (first == 0 || first == std::string_view::npos || first > 3 || first > end) return std::nullopt;
    std::string bare(text.substr(0, first));
    for (std::size_t at = first; at < end; at += 4) {
        const auto group = text.substr(at + 1, std::min(end - at - 1, std::size_t{3}));
        if (text[at] != mark || group.size() != 3) return std::nullopt;
        bare += group;
    }
    if (bare.find_first_not_of("0123456789") != std::string::npos) return std::nullopt;
    return logger_number(bare + std::string(text.substr(end)), decimal);
}

bool is_half_day(std::string_view text) {
    std::string word;
    for (const char c : text.substr(0, 5)) {
        if (c != '.') word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    return word == "am" || word == "pm";
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
