// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>

#include "model/consent/ledger.h"
#include "model/consent/quantity.h"

namespace spoilbook {

/// An empty list means any.
inline bool listed(const std::vector<std::string>& names, const std::string& name) {
    return names.empty() || std::find(names.begin(), names.end(), name) != names.end();
}

/// The name of a row, blank where there is none of that id.
template <class R>
std::string name_of(const Shelf<R>& shelf, const Id& id, std::string R::*member) {
    const R* row = shelf.find(id);
    return row == nullptr ? "" : row->*member;
}

/// Which lines of a ledger, and which parts of their loads, are in a condition's scope. What is not known (no
/// ground named, no tug, a claim that no survey classed) is out of it for what has happened, which can only
/// be counted under what is known; for a plan `not_known_is_in` takes it in: it may turn out to be. Where the
/// load is loaded (`load_is_known`), that is so only of where and as what class it goes: a claim,
/// material, barge or tug that is not recorded of it stays out.
class ScopeFilter {
 public:
    /// The season must outlive it and not change: what the scope names is looked up once.
    ScopeFilter(const Scope& scope, const Season& season, bool not_known_is_in = false,
                bool load_is_known = false);

    /// Whether it asks for the parts of a load: they are told apart by claim and class.
    [[nodiscard]] bool by_part() const { return !scope_.claims.empty() || !scope_.classes.empty(); }
    [[nodiscard]] bool takes(const LedgerLine& line) const;
    /// A part of a load, by its claim and material, at the instant of its line.
    [[nodiscard]] bool takes_part(const Id& claim, const Id& material, Instant at) const;
    /// The line and, where the scope tells parts apart, any part of its load. A load whose parts are not
    /// known may have such a part.
    [[nodiscard]] bool takes_any_of(const LedgerLine& line) const;

 private:
    /// The rows of one kind that a scope names.
    struct Named {
        bool any = true;      ///< it names none
        std::vector<Id> ids;  ///< ascending
    };
    template <class R>
    static Named named_in(const std::vector<std::string>& names, const Shelf<R>& shelf,
                          std::string R::*member);
    template <class R>
    [[nodiscard]] static bool takes(const Named& named, const Shelf<R>& shelf, const Id& id,
                                    bool not_known_is_in) {
        if (named.any || std::binary_search(named.ids.begin(), named.ids.end(), id)) return true;
        return not_known_is_in && shelf.find(id) == nullptr;
    }
    [[nodiscard]] bool may_be_in_a_cell(const LedgerLine& line) const;
    [[nodiscard]] bool takes_plant(const LedgerLine& line) const;
    [[nodiscard]] bool takes_class(const Id& claim, const Id& material, Instant at) const;

    Scope scope_;
    const Season& season_;
    bool not_known_is_in_;     ///< of where and as what class it goes
    bool not_recorded_is_in_;  ///< of the load itself
    Named claims_, grounds_, cells_, materials_, barges_, tugs_;
};

}  // namespace spoilbook
