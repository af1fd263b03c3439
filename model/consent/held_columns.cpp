// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/held_columns.h"

namespace spoilbook {

HeldColumns::HeldColumns(const Kind& kind, const std::vector<Row>& rows) : kind_(&kind) {
    for (const auto& row : rows) {
        auto& held = held_[row.id];
        for (const auto& value : row.values)
            held.push_back(!is_blank(value));
    }
}

std::optional<bool> HeldColumns::holds(const Id& row, const std::string& column) const {
    const auto place = kind_ == nullptr ? std::nullopt : kind_->index_of(column);
    if (!place) return std::nullopt;
    const auto found = held_.find(row);
    return found != held_.end() && *place < found->second.size() && found->second[*place];
}

std::string HeldColumns::words(const std::string& column) const {
    const auto place = kind_ == nullptr ? std::nullopt : kind_->index_of(column);
    return place ? kind_->fields[*place].doc : column;
}

}  // namespace spoilbook
