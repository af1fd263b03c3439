// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>
#include <utility>
#include <variant>

#include "model/unit/refusal.h"

namespace spoilbook {

/// The result of a step that has nothing to give but may be refused.
struct Done {};

/// A value, or every reason why there is none. Asking a refused one for its value is a broken program.
template <class T>
class [[nodiscard]] Checked {
 public:
    Checked(T value) : held_(std::move(value)) {}
    Checked(Refusal refusal) : held_(Refusals{std::move(refusal)}) {}
    Checked(Refusals refusals) : held_(std::move(refusals)) {}

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    explicit operator bool() const { return ok(); }

    T& value() {
        if (!ok()) throw std::logic_error("a refused result was used: " + one_line(refusals().front()));
        return std::get<0>(held_);
    }
    const T& value() const { return const_cast<Checked*>(this)->value(); }
    T& operator*() { return value(); }
    const T& operator*() const { return value(); }
    T* operator->() { return &value(); }
    const T* operator->() const { return &value(); }

    /// Empty where there is a value.
    [[nodiscard]] Refusals refusals() const { return ok() ? Refusals{} : std::get<1>(held_); }

 private:
    std::variant<T, Refusals> held_;
};

}  // namespace spoilbook
