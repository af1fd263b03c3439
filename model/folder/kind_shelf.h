// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "model/record/kind.h"

namespace spoilbook {

/// A row that bears a label: its id (the book's, or a planned one) and the parent within which the label is
/// unique (nil where the label is unique by itself).
struct Bearer {
    Id id;
    Id parent;
};

/// The rows of one kind that the book has, found by id and by key; and who bears which label, in the book or
/// in the folder.
class KindShelf {
 public:
    explicit KindShelf(const Kind& kind) : kind_(&kind) {}

    /// Takes the book's rows.
    void hold(std::vector<Row> rows);

    [[nodiscard]] const Kind& kind() const { return *kind_; }
    [[nodiscard]] const std::vector<Row>& held() const { return held_; }
    [[nodiscard]] const Row* held(const Id& id) const;
    /// The book's row with this key (see label_key); null where there is none.
    [[nodiscard]] const Row* held_by_key(const std::string& key) const;

    /// Makes a row findable by its label.
    void name(const std::vector<Value>& values, const Id& id);
    [[nodiscard]] const std::vector<Bearer>& bearers(const std::string& label) const;
    /// Every label, for "did you mean"; at most 2 000 of them.
    [[nodiscard]] std::vector<std::string> labels() const;

 private:
    const Kind* kind_;
    std::vector<Row> held_;
    std::unordered_map<Id, std::size_t> place_by_id_;
    std::unordered_map<std::string, std::size_t> place_by_key_;
    std::unordered_map<std::string, std::vector<Bearer>> by_label_;
};

/// What names a row in its kind: the values of all its label fields. Empty where the row has no label of its
/// own; of the harbour, which is one, always the same.
std::string label_key(const Kind& kind, const std::vector<Value>& values);
/// All values of a row: equal for equal rows.
std::string whole_key(const std::vector<Value>& values);

}  // namespace spoilbook
