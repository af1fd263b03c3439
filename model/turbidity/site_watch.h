// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <deque>
#include <map>

#include "model/turbidity/trigger.h"

namespace spoilbook {

/// One site under one trigger: its readings judged in order of time, and what runs there.
class SiteWatch {
 public:
    SiteWatch(const Trigger& trigger, std::string site, const SeriesOf& series_of);

    /// The time of the next present reading that some version judges; nothing after the last.
    [[nodiscard]] std::optional<Instant> next_time() const;
    /// Judges that reading. True where it passes the trigger and no event is open.
    bool step(const WorkingTime& working, const Zone& zone);
    /// The event that the last step passed.
    [[nodiscard]] TriggerEvent passed() const;

    [[nodiscard]] const SiteStanding& standing() const { return standing_; }
    /// The version that judged the last reading.
    [[nodiscard]] const SeriesVersion& version() const { return trigger_.versions[version_]; }
    void open(std::size_t event) { standing_.open = event; }
    void close() { standing_.open.reset(); }

 private:
    struct Counted {
        Instant at;
        double compared = 0;
        bool over = false;
        std::size_t overs = 0;  ///< readings over so far, this one among them
    };
    [[nodiscard]] std::optional<std::size_t> version_at(Instant at) const;
    void find_next();
    bool over(Instant t, const Zone& zone);
    bool hours_reached(Instant t, const Zone& zone);
    void remember(bool over);
    void end_hold();

    const Trigger& trigger_;
    const SeriesOf& series_of_;
    const SiteSeries* series_;
    std::map<std::size_t, LevelJudge> judges_;  ///< by version
    std::size_t next_ = 0;
    std::size_t version_ = 0;
    double longest_days_ = 0;           ///< of any version's hours_in; 0: none asks for hours
    std::deque<Counted> told_;          ///< readings told in that span
    std::optional<Instant> run_since_;  ///< of the unbroken run over the level
    Counted run_peak_, peak_;
    SiteStanding standing_;
};

}  // namespace spoilbook
