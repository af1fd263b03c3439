// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>

#include "model/logging/press.h"

namespace spoilbook {

/// Puts values into words as a person would type them: times in the book's zone, references as labels.
/// Blank stays out of the line.
class PressWords {
 public:
    explicit PressWords(const Press& press) : press_(press) {}

    [[nodiscard]] std::string now() const;
    /// A label that neither the book nor this press has given yet.
    std::string fresh(const Kind& kind);
    template <class R>
    [[nodiscard]] std::string label(const Shelf<R>& shelf, const Id& id, std::string R::*name) const {
        const R* found = shelf.find(id);
        return found == nullptr ? std::string() : found->*name;
    }
    static void text(LogLine& line, const char* column, const std::string& text);
    /// Rounded to this many decimals, where that is asked.
    static void number(LogLine& line, const char* column, std::optional<double> value, int decimals = -1);

 private:
    const Press& press_;
    std::map<std::string, std::string> given_;  ///< the newest label that this press gave, by kind
};

/// The label after `label`: its last digits plus one, as wide as they were.
std::string label_after(const std::string& label);

}  // namespace spoilbook
