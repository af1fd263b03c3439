// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/held_columns.h"

namespace spoilbook {

std::optional<std::size_t> HeldColumns::place_of(const std::string& column) const {
    return kind_ == nullptr ? std::nullopt : kind_->index_of(column);
}

const std::vector<bool>* HeldColumns::of(const Id& row) const {
    const auto found = held_.find(row);
    return found == held_.end() ? nullptr : &found->second;
}

std::string HeldColumns::words(const std::string& column) const {
    const auto place = place_of(column);
    return place ? kind_->fields[*place].doc : column;
}

}  // namespace spoilbook
