// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/gpx_track.h"

#include <expat.h>
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <memory>
#include <optional>

#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

constexpr std::size_t piece_bytes = 65536;
constexpr std::int64_t longest_token_bytes = 1 << 20;
constexpr std::size_t longest_time = 64;
constexpr int deepest = 64;

/// Decimal degrees as xsd:decimal writes them: a sign, digits and a point.
std::optional<double> degrees(std::string_view text, double most) {
    const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    while (!text.empty() && blank(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && blank(text.back()))
        text.remove_suffix(1);
    if (text.size() > 1 && text[0] == '+' && text[1] != '-') text.remove_prefix(1);
    double value = 0;
    const auto read =
        std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    const bool whole = read.ec == std::errc{} && read.ptr == text.data() + text.size();
    return whole && value >= -most && value <= most ? std::optional(value) : std::nullopt;
}

/// xsd:dateTime with the digits after the milliseconds cut off.
std::string cut_to_milliseconds(std::string_view text) {
    const auto from = std::min(text.find_first_not_of(" \t\r\n"), text.size());
    std::string cut(text.substr(from, text.find_last_not_of(" \t\r\n") + 1 - from));
    const auto point = cut.find('.');
    if (point == std::string::npos) return cut;
    auto end = point + 1;
    while (end < cut.size() && cut[end] >= '0' && cut[end] <= '9')
        ++end;
    if (end > point + 4) cut.erase(point + 4, end - point - 4);
    return cut;
}

bool names_zone(std::string_view time) {
    const auto t = time.find('T');
    return t != std::string_view::npos && time.find_first_of("Zz+-", t) != std::string_view::npos;
}

std::string_view local_name(std::string_view name) {
    const auto colon = name.rfind(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

/// Hears the parser, and keeps what it hears of track points.
class Listener {
 public:
    explicit Listener(XML_Parser parser) : parser_(parser) {
        XML_SetUserData(parser, this);
        XML_SetElementHandler(
            parser, [](void* self, const char* name, const char** given) { of(self).start(name, given); },
            [](void* self, const char*) { of(self).end(); });
        XML_SetCharacterDataHandler(
            parser, [](void* self, const char* text, int size) { of(self).hear(text, size); });
        XML_SetStartDoctypeDeclHandler(
            parser, [](void* self, const char*, const char*, const char*, int) { of(self).doctype(); });
    }

    /// The reading is whole; the parser hears nothing more of its points.
    TrackReading take() {
        reading_.put_in_order();
        return std::move(reading_);
    }
    /// Why the reading was stopped; empty where it was not.
    [[nodiscard]] const std::string& why() const { return why_; }

 private:
    static Listener& of(void* self) { return *static_cast<Listener*>(self); }

    void stop(std::string why) {
        if (why_.empty()) why_ = std::move(why);
        XML_StopParser(parser_, XML_FALSE);
    }
    void doctype() { stop("a document type may not stand in it"); }
    [[nodiscard]] std::size_t line() const { return XML_GetCurrentLineNumber(parser_); }

    void start(std::string_view name, const char** given) {
        name = local_name(name);
        if (++depth_ == 1 && name != "gpx") return stop("its root is not gpx");
        if (depth_ > deepest) return stop(fmt::format("its elements are nested over {} deep", deepest));
        if (name == "trkpt" && point_depth_ == 0) {
            point_depth_ = depth_;
            point_line_ = line();
            time_.clear();
            read_place(given);
        }
        in_time_ = point_depth_ > 0 && depth_ == point_depth_ + 1 && name == "time";
    }

    void read_place(const char** given) {
        lat_ = lon_ = std::nullopt;
        for (; *given != nullptr; given += 2) {
            const std::string_view name = given[0];
            if (name == "lat") lat_ = degrees(given[1], 90);
            if (name == "lon") lon_ = degrees(given[1], 180);
        }
    }

    void hear(const char* text, int size) {
        const auto bytes = static_cast<std::size_t>(size);
        if (in_time_ && time_.size() + bytes <= longest_time) time_.append(text, bytes);
    }

    void end() {
        in_time_ = false;
        if (depth_-- != point_depth_) return;
        point_depth_ = 0;
        keep_point();
    }

    void keep_point() {
        const std::string time = cut_to_milliseconds(time_);
        if (!lat_ || !lon_) return reading_.fault(point_line_, "the position does not read");
        if (time.empty()) return reading_.fault(point_line_, "a point without a time");
        const auto at = parse_instant(time, Zone::utc());
        if (!at) return reading_.fault(point_line_, "the time does not read");
        if (!names_zone(time)) reading_.fault(point_line_, "a time without a zone, taken as UTC");
        if (reading_.fixes.size() == TrackReading::most_fixes)
            return reading_.fault(point_line_, "more fixes than are taken");
        reading_.fixes.push_back({*at, {*lat_, *lon_}});
    }

    XML_Parser parser_;
    TrackReading reading_;
    std::string why_, time_;
    std::optional<double> lat_, lon_;
    std::size_t point_line_ = 0;
    int depth_ = 0, point_depth_ = 0;
    bool in_time_ = false;
};

}  // namespace

Checked<TrackReading> read_gpx(std::string_view bytes) {
    const std::unique_ptr<XML_ParserStruct, void (*)(XML_Parser)> parser(XML_ParserCreate(nullptr),
                                                                         XML_ParserFree);
    Listener listener(parser.get());
    std::size_t fed = 0;
    const auto refused = [&](std::string what, std::string code = "track") {
        const auto line = XML_GetCurrentLineNumber(parser.get());
        return Refusal{std::move(code), fmt::format("line {}", line), std::move(what),
                       "put the receiver's own GPX here"};
    };
    do {
        const std::size_t piece = std::min(piece_bytes, bytes.size() - fed);
        const bool last = fed + piece == bytes.size();
        const auto state =
            XML_Parse(parser.get(), bytes.data() + fed, static_cast<int>(piece), last ? XML_TRUE : XML_FALSE);
        fed += piece;
        if (!listener.why().empty()) return refused(listener.why());
        if (state != XML_STATUS_OK) return refused(XML_ErrorString(XML_GetErrorCode(parser.get())));
        // Expat reads an unfinished token again with every piece.
        if (static_cast<std::int64_t>(fed) - XML_GetCurrentByteIndex(parser.get()) > longest_token_bytes)
            return refused("a tag or text of over 1 MiB");
    } while (fed < bytes.size());
    auto reading = listener.take();
    if (reading.fixes.empty()) return refused("the file holds no track point with a time", "no-fix");
    return reading;
}

}  // namespace spoilbook
