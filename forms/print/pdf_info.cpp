// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/pdf_info.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cstddef>
#include <stdexcept>

namespace spoilbook::print {
namespace {

[[noreturn]] void refuse(const std::string& what) {
    throw std::runtime_error("the printed PDF is not as expected: " + what);
}

std::size_t number_at(const std::string& bytes, std::size_t at) {
    std::size_t value = 0;
    const char* first = bytes.data() + std::min(at, bytes.size());
    const auto result = std::from_chars(first, bytes.data() + bytes.size(), value);
    if (result.ec != std::errc{}) {
        refuse(fmt::format("no number at {}", at));
    }
    return value;
}

std::size_t found(const std::string& bytes, const std::string& word, std::size_t from) {
    const std::size_t at = bytes.find(word, from);
    if (at == std::string::npos) {
        refuse("no " + word);
    }
    return at;
}

// PDF text string as hexadecimal UTF-16, so that no byte of it can end the string or look like a key.
std::string text_string(const std::string& utf8) {
    std::string hex = "<FEFF";
    for (std::size_t i = 0; i < utf8.size();) {
        const auto lead = static_cast<unsigned char>(utf8[i]);
        const std::size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        std::uint32_t code = length == 1 ? lead : lead & (0xFFU >> (length + 1));
        for (std::size_t k = 1; k < length; ++k) {
            code = code << 6 | (i + k < utf8.size() ? static_cast<unsigned char>(utf8[i + k]) & 0x3FU : 0U);
        }
        i += length;
        if (code >= 0x10000) {
            code -= 0x10000;
            hex += fmt::format("{:04X}{:04X}", 0xD800 + (code >> 10 & 0x3FF), 0xDC00 + (code & 0x3FF));
        } else {
            hex += fmt::format("{:04X}", code);
        }
    }
    return hex + ">";
}

std::string date_string(std::int64_t utc_ms) {
    using namespace std::chrono;
    if (utc_ms < -62135596800000 || utc_ms > 253402300799999) {
        throw std::out_of_range("a PDF's date must lie in the years 1 to 9999");
    }
    const sys_time<milliseconds> at{milliseconds{utc_ms}};
    const auto day = floor<days>(at);
    const year_month_day date{day};
    const hh_mm_ss time{floor<seconds>(at - day)};
    return fmt::format("(D:{:04}{:02}{:02}{:02}{:02}{:02}Z)", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                       time.hours().count(), time.minutes().count(), time.seconds().count());
}

struct Xref {
    std::size_t first_entry = 0;
    std::size_t count = 0;
    std::size_t start_number = 0;  // where the number behind "startxref" stands
    std::size_t info_object = 0;   // number of the information dictionary
};

constexpr std::size_t entry_length = 20;

Xref read_xref(const std::string& bytes) {
    Xref xref;
    const std::size_t mark = bytes.rfind("startxref\n");
    if (mark == std::string::npos) {
        refuse("no startxref");
    }
    xref.start_number = mark + 10;
    const std::size_t table = number_at(bytes, xref.start_number);
    if (table >= bytes.size() || bytes.compare(table, 7, "xref\n0 ") != 0) {
        refuse("no table at startxref");
    }
    xref.count = number_at(bytes, table + 7);
    xref.first_entry = found(bytes, "\n", table + 7) + 1;
    const std::size_t trailer = xref.first_entry + xref.count * entry_length;
    if (bytes.compare(std::min(trailer, bytes.size()), 7, "trailer") != 0) {
        refuse("no trailer behind the table");
    }
    xref.info_object = number_at(bytes, found(bytes, "/Info ", trailer) + 6);
    if (xref.info_object >= xref.count) {
        refuse("no information dictionary");
    }
    return xref;
}

// Moves each offset behind `moved_from` by `by` bytes. The table has fixed widths, so its own length stays.
void move_offsets(std::string& bytes, const Xref& xref, std::size_t moved_from, std::ptrdiff_t by) {
    const auto moved = [by](std::size_t offset) {
        return static_cast<std::size_t>(static_cast<std::ptrdiff_t>(offset) + by);
    };
    for (std::size_t i = 0; i < xref.count; ++i) {
        const std::size_t at = xref.first_entry + i * entry_length;
        const std::size_t offset = number_at(bytes, at);
        if (bytes[at + 17] == 'n' && offset > moved_from) {
            bytes.replace(at, 10, fmt::format("{:010}", moved(offset)));
        }
    }
    const std::size_t start = number_at(bytes, xref.start_number);
    const std::size_t digits = bytes.find_first_not_of("0123456789", xref.start_number) - xref.start_number;
    bytes.replace(xref.start_number, digits, fmt::format("{}", moved(start)));
}

}  // namespace

std::string with_info(const std::string& bytes, const PdfInfo& info) {
    const Xref xref = read_xref(bytes);
    const std::size_t from = number_at(bytes, xref.first_entry + xref.info_object * entry_length);
    if (number_at(bytes, from) != xref.info_object) {
        refuse("the table does not point at the information dictionary");
    }
    const std::size_t to = found(bytes, "endobj", from);
    const std::string object =
        fmt::format("{} 0 obj\n<<\n/Title {}\n/Creator {}\n/Producer {}\n/CreationDate {}\n>>\n",
                    xref.info_object, text_string(info.title), text_string(info.creator),
                    text_string(info.producer), date_string(info.as_at_utc_ms));
    std::string fixed = bytes;
    move_offsets(fixed, xref, from,
                 static_cast<std::ptrdiff_t>(object.size() + from) - static_cast<std::ptrdiff_t>(to));
    fixed.replace(from, to - from, object);
    return fixed;
}

}  // namespace spoilbook::print
