// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

namespace spoilbook {

/// How well a survey of an order must know a depth.
struct S44Order {
    double a_m = 0;  ///< what does not grow with depth
    double b = 0;    ///< what does, per metre of it

    /// Total vertical uncertainty allowed at a depth of d m (0 where the bed dries), 95 %: √(a² + (b d)²), m.
    [[nodiscard]] double tvu_m(double depth_m) const;
    /// The standard uncertainty that it stands for: TVU / 1.96, m.
    [[nodiscard]] double u_m(double depth_m) const;
};

/// "Exclusive", "Special", "1a", "1b", "2", also "Order 1a", "Special Order"; upper case or lower. Nothing
/// for another text. Source: IHO S-44 edition 6.1.0 (October 2022), 3.2.3 and table 1.
std::optional<S44Order> s44_order(std::string_view name);

}  // namespace spoilbook
