// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/pretty_json.h"

#include <algorithm>

namespace spoilbook {

namespace {

using nlohmann::ordered_json;

bool is_bare(const ordered_json& list) {
    return std::all_of(list.begin(), list.end(), [](const auto& item) { return item.is_primitive(); });
}

void write(const ordered_json& node, std::size_t depth, std::string& into);

void write_bare_list(const ordered_json& list, std::string& into) {
    into += '[';
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (i > 0) into += ", ";
        into += list[i].dump();
    }
    into += ']';
}

void new_line(std::size_t depth, std::string& into) {
    into += '\n';
    into.append(2 * depth, ' ');
}

void write(const ordered_json& node, std::size_t depth, std::string& into) {
    if (node.is_primitive() || node.empty()) {
        into += node.dump();
        return;
    }
    if (node.is_array() && is_bare(node)) return write_bare_list(node, into);
    into += node.is_array() ? '[' : '{';
    bool first = true;
    for (const auto& [name, value] : node.items()) {
        if (!first) into += ',';
        first = false;
        new_line(depth + 1, into);
        if (node.is_object()) into += ordered_json(name).dump() + ": ";
        write(value, depth + 1, into);
    }
    new_line(depth, into);
    into += node.is_array() ? ']' : '}';
}

}  // namespace

std::string pretty_json(const ordered_json& node) {
    std::string text;
    write(node, 0, text);
    text += '\n';
    return text;
}

ordered_json ordered(const nlohmann::json& node) {
    if (node.is_object()) {
        ordered_json object = ordered_json::object();
        for (const auto& [name, value] : node.items())
            object[name] = ordered(value);
        return object;
    }
    if (node.is_array()) {
        ordered_json list = ordered_json::array();
        for (const auto& value : node)
            list.push_back(ordered(value));
        return list;
    }
    ordered_json ordered = node;
    return ordered;
}

}  // namespace spoilbook
