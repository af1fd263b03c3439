// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/bed/text_grid.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>

namespace spoilbook {

namespace {

constexpr std::size_t piece_bytes = std::size_t{1} << 20;
/// No number and no word of a header is longer.
constexpr std::size_t longest_word = 64;

bool is_number(std::string word) {
    std::replace(word.begin(), word.end(), ',', '.');
    const char* from = word.data() + (word.starts_with('+') ? 1 : 0);
    const char* end = word.data() + word.size();
    double number = 0;
    const auto read = std::from_chars(from, end, number);
    return read.ec != std::errc::invalid_argument && read.ptr == end;
}

/// The words of a file, one by one; a word may lie in two pieces.
class Words {
 public:
    explicit Words(const ByteSource& bytes) : bytes_(bytes) {}

    /// Empty at the end.
    std::string next() {
        std::string word;
        for (char c = 0; word.size() < longest_word && take(c);) {
            if (std::isspace(static_cast<unsigned char>(c)) == 0)
                word += c;
            else if (!word.empty())
                break;
        }
        return word;
    }

 private:
    bool take(char& c) {
        if (at_ == piece_.size()) {
            from_ += piece_.size();
            piece_ = bytes_.piece(from_, piece_bytes);
            at_ = 0;
            if (piece_.empty()) return false;
        }
        c = piece_[at_++];
        return true;
    }

    const ByteSource& bytes_;
    std::string piece_;
    std::uint64_t from_ = 0;
    std::size_t at_ = 0;
};

}  // namespace

std::string why_text_grid_is_unfit(const ByteSource& bytes, std::uint64_t expected) {
    Words words(bytes);
    std::string word = words.next();
    // A header is names, each with its number.
    while (!word.empty() && std::isalpha(static_cast<unsigned char>(word.front())) != 0 && !is_number(word)) {
        (void)words.next();
        word = words.next();
    }
    std::uint64_t read = 0;
    for (; !word.empty() && read < expected; word = words.next(), ++read) {
        if (!is_number(word)) return fmt::format("\"{}\" stands where a number should", word);
    }
    return read == expected
               ? ""
               : fmt::format("it holds {} of the {} numbers that its header tells of: it is cut short", read,
                             expected);
}

}  // namespace spoilbook
