// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <unordered_map>

#include "model/record/kind.h"

namespace spoilbook {

/// Which columns of the rows of one kind hold something: what a condition that asks for records is judged by.
class HeldColumns {
 public:
    HeldColumns() = default;
    /// `held`: of each row, which of the kind's fields hold something, in their order.
    HeldColumns(const Kind& kind, std::unordered_map<Id, std::vector<bool>> held)
        : kind_(&kind), held_(std::move(held)) {}

    /// The column's place; nothing where the kind has no such column.
    [[nodiscard]] std::optional<std::size_t> place_of(const std::string& column) const;
    /// Which columns of a row hold something, by their place; null for a row that is not there.
    [[nodiscard]] const std::vector<bool>* of(const Id& row) const;
    /// What the column is, in words; the name itself where there is none.
    [[nodiscard]] std::string words(const std::string& column) const;

 private:
    const Kind* kind_ = nullptr;
    std::unordered_map<Id, std::vector<bool>> held_;
};

}  // namespace spoilbook
