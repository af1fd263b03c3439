// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/position_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "model/unit/number_text.h"

namespace spoilbook {

namespace {

struct Axial {
    const char* name;
    char positive, negative;
    const char* like;  ///< how it may be written
};

const Axial& of(Axis axis) {
    static constexpr Axial latitude{"latitude", 'N', 'S', "-41.20575, 41°12.345'S or 41°12'20.7\"S"};
    static constexpr Axial longitude{"longitude", 'E', 'W', "174.92797, 174°55.678'E or 174°55'40.7\"E"};
    return axis == Axis::latitude ? latitude : longitude;
}

/// The signs in use, in a small alphabet: d, m, s for degrees, minutes, seconds; N, S, E, W; digits, . - and
/// blanks; ? is anything else. The longer come first: two minute signs are one of seconds.
std::string in_few_signs(std::string_view text) {
    static constexpr std::array<std::pair<std::string_view, char>, 30> signs{{
        {"degrees", 'd'}, {"degree", 'd'}, {"deg", 'd'}, {"minutes", 'm'}, {"minute", 'm'}, {"min", 'm'},
        {"seconds", 's'}, {"second", 's'}, {"sec", 's'}, {"''", 's'},      {"′′", 's'},     {"’’", 's'},
        {"°", 'd'},       {"º", 'd'},      {"˚", 'd'},   {"'", 'm'},       {"′", 'm'},      {"’", 'm'},
        {"\"", 's'},      {"″", 's'},      {"”", 's'},   {"−", '-'},       {"–", '-'},      {"\u00a0", ' '},
        {"\u2009", ' '},  {"\u202f", ' '}, {"n", 'N'},   {"s", 'S'},       {"e", 'E'},      {"w", 'W'},
    }};
    std::string few;
    while (!text.empty()) {
        const auto* found = std::find_if(signs.begin(), signs.end(),
                                         [&](const auto& sign) { return text.starts_with(sign.first); });
        if (found != signs.end()) {
            few += found->second;
            text.remove_prefix(found->first.size());
        } else {
            const char c = text.front();
            few += std::string_view("0123456789.-NSEW \t").find(c) == std::string_view::npos ? '?' : c;
            text.remove_prefix(1);
        }
    }
    return few;
}

struct Part {
    std::string digits;  ///< with its point, where it has one
    char mark = 0;       ///< d, m, s, or 0: by its place
};

struct Written {
    char letter = 0;  ///< N, S, E, W
    bool minus = false;
    std::vector<Part> parts;
};

bool is_digit(char c) {
    return (c >= '0' && c <= '9') || c == '.';
}

bool is_letter(char c) {
    return c == 'N' || c == 'S' || c == 'E' || c == 'W';
}

/// A letter stands before the figures or behind them all, a minus before them; a hyphen between two figures
/// parts them. Nothing where it is otherwise.
std::optional<Written> taken_apart(const std::string& few) {
    Written written;
    for (std::size_t i = 0; i < few.size();) {
        const char c = few[i];
        if (is_digit(c)) {
            const auto end =
                std::find_if_not(few.begin() + static_cast<std::ptrdiff_t>(i), few.end(), is_digit);
            const auto size = static_cast<std::size_t>(end - few.begin()) - i;
            written.parts.push_back({few.substr(i, size)});
            i += size;
            continue;
        }
        const bool first = written.parts.empty();
        const bool last = few.find_last_not_of(" \t") == i;
        const bool parted =
            c == '-' && !first && few[i - 1] != ' ' && i + 1 < few.size() && is_digit(few[i + 1]);
        if (is_letter(c) && written.letter == 0 && (first || last)) {
            written.letter = c;
        } else if (c == '-' && first && !written.minus) {
            written.minus = true;
        } else if (std::string_view("dms").find(c) != std::string_view::npos) {
            if (written.parts.empty() || written.parts.back().mark != 0) return std::nullopt;
            written.parts.back().mark = c;
        } else if (c != ' ' && c != '\t' && !parted) {
            return std::nullopt;
        }
        ++i;
    }
    return written;
}

bool is_pair(const std::string& few) {
    const auto has = [&](const char* signs) { return few.find_first_of(signs) != std::string::npos; };
    return has("NS") && has("EW") && has("0123456789") && !has("?");
}

Refusal not_one(std::string_view text, const Axial& axis) {
    return {"not-a-number", "", fmt::format("\"{}\" is not a {}", text, axis.name),
            fmt::format("write it as {}", axis.like)};
}

Refusal unclear(std::string_view text, const char* why, const Axial& axis) {
    return {"unclear-position", "", fmt::format("\"{}\" is unclear: {}", text, why),
            fmt::format("write the {} as {}", axis.name, axis.like)};
}

/// Degrees without their sign; nothing where a part is no number, has decimals though another follows, or
/// stands where its mark does not.
std::optional<std::array<double, 3>> figures_of(const std::vector<Part>& parts) {
    std::array<double, 3> figures{};
    if (parts.empty() || parts.size() > figures.size()) return std::nullopt;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto& [digits, mark] = parts[i];
        const auto number = parse_number(digits);
        const bool whole = digits.find('.') == std::string::npos;
        if (!number || (i + 1 < parts.size() && !whole)) return std::nullopt;
        if (mark != 0 && mark != "dms"[i]) return std::nullopt;
        figures.at(i) = *number;
    }
    return figures;
}

}  // namespace

Checked<double> parse_degrees(std::string_view text, Axis axis) {
    if (const auto plain = parse_number(text)) return *plain;
    const Axial& on = of(axis);
    const std::string few = in_few_signs(text);
    if (is_pair(few)) return unclear(text, "latitude and longitude each have their own place", on);
    const auto written = taken_apart(few);
    const auto figures = written ? figures_of(written->parts) : std::nullopt;
    if (!figures) return not_one(text, on);
    const auto& [letter, minus, parts] = *written;
    if (letter != 0 && letter != on.positive && letter != on.negative)
        return unclear(text, "its letter belongs to the other axis", on);
    if (letter != 0 && minus) return unclear(text, "it has a minus and a letter", on);
    if (letter == 0 && !minus && parts.size() > 1)
        return unclear(text, "it has no letter that says which half of the earth", on);
    for (const double sixtieths : {(*figures)[1], (*figures)[2]}) {
        if (sixtieths >= 60) {
            return Refusal{"out-of-range", "",
                           fmt::format("{} minutes or seconds in \"{}\"", number_text(sixtieths), text),
                           "they lie below 60"};
        }
    }
    const double degrees = (*figures)[0] + (*figures)[1] / 60 + (*figures)[2] / 3600;
    const bool below_zero = minus || letter == on.negative;
    return degrees == 0 ? 0.0 : below_zero ? -degrees : degrees;
}

}  // namespace spoilbook
