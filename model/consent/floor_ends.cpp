// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/floor_ends.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "model/consent/quantity_text.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// The last instant that counts in a window, and what the window is called.
struct WindowEnd {
    Instant last;
    std::string name;
    std::optional<std::uint32_t> trip;  ///< of a trip's window: two may end in one millisecond
};

class FloorJudge {
 public:
    FloorJudge(const Ledger& ledger, const Condition& condition, const Quantity& quantity,
               Instant accepted_by)
        : ledger_(ledger),
          season_(ledger.season()),
          condition_(condition),
          quantity_(quantity),
          limits_(ledger, accepted_by) {
        if (const auto* consent = season_.consents.find(condition.consent)) consent_ = *consent;
        began_ = first_version_began();
        if (consent_.commences && (!began_ || *began_ < *consent_.commences)) began_ = consent_.commences;
    }

    [[nodiscard]] std::vector<FloorEnd> judge(const Period& span) const {
        std::vector<FloorEnd> ends;
        for (const auto& window : windows_in(span)) {
            for (auto& state : states_at(window)) {
                if (!state.limit) continue;  // a share whose total is below its floor
                ends.push_back(judged(std::move(state), window.name));
            }
        }
        return ends;
    }

 private:
    [[nodiscard]] std::vector<LimitState> states_at(const WindowEnd& window) const {
        if (!window.trip) return limits_.limits_of(condition_, window.last);
        return {limits_.limit_of_trip(condition_, quantity_, window.last, *window.trip)};
    }

    /// Nothing where a version has no beginning of its own.
    [[nodiscard]] std::optional<Instant> first_version_began() const {
        std::optional<Instant> first = condition_.from;
        for (const auto& other : season_.conditions.rows()) {
            if (other.consent != condition_.consent || other.condition != condition_.condition) continue;
            if (!first || !other.from) return std::nullopt;
            first = std::min(first, other.from);
        }
        return first;
    }

    [[nodiscard]] std::vector<WindowEnd> windows_in(const Period& span) const {
        switch (quantity_.window.kind) {
            case WindowKind::term:
                return ended_by(consent_.expires, span, "the term");
            case WindowKind::phase:
                return ended_by(quantity_.window.to, span, "the phase");
            case WindowKind::rolling:
            case WindowKind::mean:
                return {{span.to - 1, "up to " + instant_text(span.to, season_.zone), std::nullopt}};
            case WindowKind::trip:
                return trips_in(span);
            case WindowKind::campaign:
                return campaigns_in(span);
            case WindowKind::calendar:
            case WindowKind::consent_year:
                break;
        }
        return calendar_in(span);
    }

    [[nodiscard]] static std::vector<WindowEnd> ended_by(std::optional<Instant> end, const Period& span,
                                                         std::string name) {
        if (!end || *end <= span.from || span.to < *end) return {};
        return {{*end - 1, std::move(name), std::nullopt}};
    }

    [[nodiscard]] std::vector<WindowEnd> calendar_in(const Period& span) const {
        std::vector<WindowEnd> ends;
        for (Instant at = span.from;;) {
            const auto window = window_at(quantity_.window, consent_, season_, at);
            if (!window || !window->end || span.to < *window->end) return ends;
            if (span.from < *window->end) ends.push_back({*window->end - 1, days_of(*window), std::nullopt});
            at = *window->end;
        }
    }

    [[nodiscard]] std::vector<WindowEnd> campaigns_in(const Period& span) const {
        std::vector<WindowEnd> ends;
        for (const auto& window : campaign_windows(season_, quantity_.window.name)) {
            if (!window.end || *window.end <= span.from || span.to < *window.end) continue;
            ends.push_back({*window.end - 1, days_of(window), std::nullopt});
        }
        return ends;
    }

    /// A trip's window ends with the last of its releases that counts.
    [[nodiscard]] std::vector<WindowEnd> trips_in(const Period& span) const {
        std::map<std::uint32_t, Instant> last_of;
        for (const auto& count : counts_of(quantity_, {}, condition_, ledger_))
            last_of[count.key] = count.at;
        std::vector<WindowEnd> windows;
        for (const auto& line : ledger_.released()) {
            const auto last = last_of.find(line.trip_number);
            if (last == last_of.end() || last->second != line.at || !span.contains(line.at)) continue;
            windows.push_back({line.at, "trip " + line.release->trip->trip, line.trip_number});
            last_of.erase(last);  // two of its releases may end together
        }
        return windows;
    }

    [[nodiscard]] std::string days_of(const Window& window) const {
        const Zone& zone = season_.zone;
        const auto last = day_text(zone.day_of(*window.end - 1));
        if (!window.start) return "up to " + last;
        const auto first = day_text(zone.day_of(*window.start));
        return first == last ? first : first + " to " + last;
    }

    [[nodiscard]] FloorEnd judged(LimitState state, const std::string& window) const {
        FloorEnd end;
        end.window = window;
        if (state.member && !state.member->name.empty())
            end.member = each_of_text(quantity_.each_of) + " " + state.member->name;
        const auto shown = [&](double value) {
            const int decimals = shown_decimals(quantity_);
            return fmt::format("{:.{}f}", rounded_down(value * shown_scale(quantity_), decimals), decimals);
        };
        const auto reached =
            fmt::format("{} of {} {} reached", shown(state.used), shown(*state.limit), unit_text(quantity_));
        if (!exceeds(*state.limit, state.used)) {
            end.judged = Compliance::complied;
        } else if (state.unknown > 0) {
            end.why = fmt::format("{}, and {} load(s) cannot be valued", reached, state.unknown);
        } else if (state.hangs_on_records()) {
            end.why = fmt::format("{}, and of {} load(s) it is not recorded whether they count", reached,
                                  state.not_recorded);
        } else if (state.window_start && began_ && *state.window_start < *began_) {
            end.why = reached + ", and its window reaches back before the condition began";
        } else {
            end.judged = Compliance::breached;
            end.why = reached;
        }
        end.state = std::move(state);
        return end;
    }

    const Ledger& ledger_;
    const Season& season_;
    const Condition& condition_;
    const Quantity& quantity_;
    JudgedLimits limits_;
    Consent consent_;
    std::optional<Instant> began_;
};

}  // namespace

std::string why_floor_is_not_judged(const Quantity& quantity) {
    if (quantity.window.kind != WindowKind::trip) return "";
    if (quantity.each_of != EachOf::none) return "it is a floor on each member of a trip";
    if (quantity.scope.activity == Activity::dredge) return "it is a floor on what is dredged for a trip";
    return quantity.measure == LimitMeasure::days ? "a trip's days are not counted" : "";
}

std::vector<FloorEnd> floors_ended(const Ledger& ledger, const Condition& condition, const Quantity& quantity,
                                   const Period& span, Instant accepted_by) {
    if (quantity.at_most || !why_floor_is_not_judged(quantity).empty()) return {};
    return FloorJudge(ledger, condition, quantity, accepted_by).judge(span);
}

}  // namespace spoilbook
