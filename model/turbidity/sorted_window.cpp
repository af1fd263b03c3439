// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/sorted_window.h"

#include <algorithm>
#include <stdexcept>

namespace spoilbook {

namespace {

constexpr std::size_t largest_block = 512;

}  // namespace

std::size_t SortedWindow::block_of(double value) const {
    const auto found = std::partition_point(blocks_.begin(), blocks_.end(),
                                            [&](const Block& block) { return block.back() < value; });
    const auto place = static_cast<std::size_t>(found - blocks_.begin());
    return place == blocks_.size() ? place - 1 : place;
}

void SortedWindow::insert(double value) {
    ++size_;
    if (blocks_.empty()) {
        blocks_.push_back({value});
        return;
    }
    const std::size_t place = block_of(value);
    Block& block = blocks_[place];
    block.insert(std::upper_bound(block.begin(), block.end(), value), value);
    if (block.size() <= largest_block) return;
    const auto middle = block.begin() + static_cast<std::ptrdiff_t>(block.size() / 2);
    Block upper(middle, block.end());
    block.erase(middle, block.end());
    blocks_.insert(blocks_.begin() + static_cast<std::ptrdiff_t>(place) + 1, std::move(upper));
}

void SortedWindow::erase(double value) {
    if (blocks_.empty()) throw std::logic_error("a number left a window that is empty");
    const std::size_t place = block_of(value);
    Block& block = blocks_[place];
    const auto found = std::lower_bound(block.begin(), block.end(), value);
    if (found == block.end() || *found != value)
        throw std::logic_error("a number left a window that it was not in");
    block.erase(found);
    if (block.empty()) blocks_.erase(blocks_.begin() + static_cast<std::ptrdiff_t>(place));
    --size_;
}

double SortedWindow::at(std::size_t k) const {
    for (const Block& block : blocks_) {
        if (k < block.size()) return block[k];
        k -= block.size();
    }
    throw std::out_of_range("no such order statistic");
}

}  // namespace spoilbook
