// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/json_text.h"

#include <fmt/format.h>

#include <cmath>

#include "model/folder/utf8.h"
#include "model/record/field_text.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// Builds the value as nlohmann's own reader would, and keeps the path, so that a member given twice is seen.
class Builder : public nlohmann::json_sax<json> {
 public:
    Builder(std::string_view bytes, const std::string& file, Complaints& complaints)
        : bytes_(bytes), file_(file), complaints_(complaints) {}

    json root;
    bool sound = true;

    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override {
        if (value.find('\0') != std::string::npos)
            refuse("nul-byte", fmt::format("{} {}", file_, here()), "a zero byte", "leave it out");
        return put(std::move(value));
    }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(json::object()); }
    bool start_array(std::size_t) override { return open(json::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool key(string_t& name) override {
        json& object = *stack_.back().value;
        if (name.find('\0') != std::string::npos)
            refuse("nul-byte", fmt::format("{} {}", file_, path()), "a zero byte in a name", "leave it out");
        if (object.contains(name)) {
            refuse("twice", fmt::format("{} {}", file_, member_path(path(), name)),
                   "the member is given twice", "keep one");
        }
        stack_.back().member = name;
        return true;
    }
    bool parse_error(std::size_t position, const std::string&,
                     const nlohmann::detail::exception& why) override {
        const TextPlace place = place_at(bytes_, position > 0 ? position - 1 : 0);
        const std::string said = why.what();
        const auto cut = said.find("- ");
        // nlohmann says "[json.exception.parse_error.101] parse error at …: syntax error while … - unexpected
        // …".
        const std::string what = cut == std::string::npos || why.id == 406
                                     ? "a number beyond what can be kept"
                                     : said.substr(cut + 2, 200);
        refuse("not-json", fmt::format("{} line {} column {}", file_, place.line, place.column),
               "not JSON: " + what, "write it as JSON (RFC 8259)");
        return false;
    }

 private:
    struct Level {
        json* value;
        std::string member;  ///< of an object, the one being read
    };

    bool put(json value) {
        place(std::move(value));
        return true;
    }
    json* place(json value) {
        if (stack_.empty()) {
            root = std::move(value);
            return &root;
        }
        json& parent = *stack_.back().value;
        if (parent.is_array()) {
            parent.push_back(std::move(value));
            return &parent.back();
        }
        json& member = parent[stack_.back().member];
        member = std::move(value);
        return &member;
    }
    bool open(json empty) {
        if (stack_.size() >= deepest_json) {
            refuse("too-deep", fmt::format("{} {}", file_, path()),
                   fmt::format("lists and objects nested deeper than {}", deepest_json), "nest less");
            return false;
        }
        stack_.push_back({place(std::move(empty)), ""});
        return true;
    }
    bool close() {
        stack_.pop_back();
        return true;
    }
    /// The object or list that is open.
    [[nodiscard]] std::string path() const { return path_of(stack_.empty() ? 0 : stack_.size() - 1); }
    /// The value that comes next.
    [[nodiscard]] std::string here() const {
        if (stack_.empty()) return "";
        const Level& level = stack_.back();
        return level.value->is_array() ? item_path(path(), level.value->size())
                                       : member_path(path(), level.member);
    }
    [[nodiscard]] std::string path_of(std::size_t depth) const {
        std::string path;
        for (std::size_t i = 0; i < depth; ++i) {
            const Level& level = stack_[i];
            path = level.value->is_array() ? item_path(path, level.value->size() - 1)
                                           : member_path(path, level.member);
        }
        return path;
    }
    void refuse(std::string code, std::string where, std::string what, std::string mend) {
        sound = false;
        complaints_.refuse(file_, {std::move(code), std::move(where), std::move(what), std::move(mend)});
    }

    std::string_view bytes_;
    const std::string& file_;
    Complaints& complaints_;
    std::vector<Level> stack_;
};

}  // namespace

std::optional<json> read_json(std::string_view bytes, const std::string& file, Complaints& complaints) {
    bytes = without_byte_order_mark(bytes);
    if (auto refusal = why_not_text(bytes, file)) {
        complaints.refuse(file, std::move(*refusal));
        return std::nullopt;
    }
    Builder builder(bytes, file, complaints);
    const bool whole = json::sax_parse(bytes.begin(), bytes.end(), &builder);
    if (!whole || !builder.sound) {
        complaints.lose_rows(file);
        return std::nullopt;
    }
    return std::move(builder.root);
}

json canonical(const json& given) {
    if (given.is_object()) {
        json object = json::object();
        for (const auto& [name, value] : given.items()) {
            if (!value.is_null()) object[name] = canonical(value);
        }
        return object;
    }
    if (given.is_array()) {
        json list = json::array();
        for (const auto& value : given)
            list.push_back(canonical(value));
        return list;
    }
    if (given.is_string()) return std::string(trimmed(given.get_ref<const std::string&>()));
    if (given.is_number_float()) {
        const double number = given.get<double>();
        constexpr double exact = 9007199254740992.0;  // 2^53
        if (std::floor(number) == number && std::fabs(number) < exact)
            return static_cast<std::int64_t>(number);
    }
    if (given.is_number_unsigned() && given.get<std::uint64_t>() <= INT64_MAX)
        return given.get<std::int64_t>();
    return given;
}

std::string member_path(const std::string& path, std::string_view member) {
    return path.empty() ? std::string(member) : fmt::format("{}.{}", path, member);
}

std::string item_path(const std::string& path, std::size_t index) {
    return fmt::format("{}[{}]", path, index);
}

std::string what_it_is(const json& value) {
    if (value.is_string()) return "a text";
    if (value.is_boolean()) return "true or false";
    if (value.is_number()) return "a number";
    if (value.is_array()) return "a list";
    if (value.is_object()) return "an object";
    return "nothing";
}

}  // namespace spoilbook
