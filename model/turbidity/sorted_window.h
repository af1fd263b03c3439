// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

namespace spoilbook {

/// A bag of numbers kept in order, for order statistics of a moving window: sorted blocks of at most 512,
/// so that one entering or leaving moves at most one block (and the list of blocks).
class SortedWindow {
 public:
    void insert(double value);
    /// Takes one out. REQUIRES that it is there.
    void erase(double value);
    /// The k-th smallest, from 0. REQUIRES k < size().
    [[nodiscard]] double at(std::size_t k) const;
    [[nodiscard]] std::size_t size() const { return size_; }

 private:
    using Block = std::vector<double>;
    /// The first block whose greatest number is not below value; the last one where there is none.
    [[nodiscard]] std::size_t block_of(double value) const;

    std::vector<Block> blocks_;  ///< none is empty
    std::size_t size_ = 0;
};

}  // namespace spoilbook
