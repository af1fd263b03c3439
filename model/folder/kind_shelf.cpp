// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/kind_shelf.h"

#include <cstring>

#include "model/folder/given.h"

namespace spoilbook {

namespace {

void append_bytes(std::string& key, const void* bytes, std::size_t count) {
    key.append(static_cast<const char*>(bytes), count);
}

void append_key(std::string& key, const Value& value) {
    key += static_cast<char>('0' + value.index());
    if (const auto* whole = std::get_if<std::int64_t>(&value)) append_bytes(key, whole, sizeof *whole);
    if (const auto* number = std::get_if<double>(&value)) append_bytes(key, number, sizeof *number);
    if (const auto* id = std::get_if<Id>(&value)) append_bytes(key, id->bytes.data(), id->bytes.size());
    if (const auto* text = std::get_if<std::string>(&value)) {
        const std::size_t length = text->size();
        append_bytes(key, &length, sizeof length);
        key += *text;
    }
}

/// The second label field where it is a reference: the parent within which the first is unique.
Id parent_in(const Kind& kind, const std::vector<Value>& values) {
    if (kind.label.size() < 2 || kind.field(kind.label[1]).type != FieldType::reference) return {};
    const auto* id = std::get_if<Id>(&value_of(kind, values, kind.label[1]));
    return id == nullptr ? Id{} : *id;
}

}  // namespace

std::string label_key(const Kind& kind, const std::vector<Value>& values) {
    if (kind.name == "harbour") return "harbour";
    std::string key;
    if (kind.label.empty() || is_blank(value_of(kind, values, kind.label.front()))) return key;
    for (const auto& field : kind.label)
        append_key(key, value_of(kind, values, field));
    return key;
}

std::string whole_key(const std::vector<Value>& values) {
    std::string key;
    for (const auto& value : values)
        append_key(key, value);
    return key;
}

void KindShelf::hold(std::vector<Row> rows) {
    held_ = std::move(rows);
    place_by_id_.reserve(held_.size());
    for (std::size_t i = 0; i < held_.size(); ++i) {
        place_by_id_.emplace(held_[i].id, i);
        const std::string key = label_key(*kind_, held_[i].values);
        if (!key.empty()) place_by_key_.emplace(key, i);
        name(held_[i].values, held_[i].id);
    }
}

const Row* KindShelf::held(const Id& id) const {
    const auto found = place_by_id_.find(id);
    return found == place_by_id_.end() ? nullptr : &held_[found->second];
}

const Row* KindShelf::held_by_key(const std::string& key) const {
    const auto found = place_by_key_.find(key);
    return found == place_by_key_.end() ? nullptr : &held_[found->second];
}

void KindShelf::name(const std::vector<Value>& values, const Id& id) {
    if (kind_->label.empty()) return;
    const std::string label = text_of(*kind_, values, kind_->label.front());
    if (label.empty()) return;
    auto& bearers = by_label_[label];
    for (const Bearer& bearer : bearers) {
        if (bearer.id == id) return;
    }
    bearers.push_back({id, parent_in(*kind_, values)});
}

const std::vector<Bearer>& KindShelf::bearers(const std::string& label) const {
    static const std::vector<Bearer> none;
    const auto found = by_label_.find(label);
    return found == by_label_.end() ? none : found->second;
}

std::vector<std::string> KindShelf::labels() const {
    constexpr std::size_t most = 2000;
    std::vector<std::string> labels;
    for (const auto& [label, bearers] : by_label_) {
        if (labels.size() == most) break;
        labels.push_back(label);
    }
    return labels;
}

}  // namespace spoilbook
