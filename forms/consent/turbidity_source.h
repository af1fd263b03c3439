// SPDX-License-Identifier: GPL-3.0-or-later
// What the turbidity page asks of the model, off the screen's thread.
#pragma once

#include <mutex>

#include "forms/consent/turbidity_rows.h"
#include "forms/works/figures_source.h"

namespace spoilbook::form {

struct ViewAsked {
    std::vector<std::string> sites;
    std::optional<Period> window;  ///< nothing: the newest two weeks
    int columns = 1000;
};

struct ViewAnswer {
    std::shared_ptr<const TurbidityView> view;
    std::optional<Period> extent;
    std::vector<ReadingRow> readings;  ///< of the window, the first of them
    QString problem;
};

inline constexpr std::size_t most_reading_rows = 4000;

struct EventsAnswer {
    std::vector<TriggerRow> events;
    std::vector<MonthRow> months;
    std::map<std::string, SiteStands> stands;
    std::vector<Period> digging, releasing;
    QString problem;
};

/// What a passed trigger rests on: one moment of it.
struct MomentRow {
    QString what;
    Instant at;
    std::optional<double> statistic, control, level;
};

struct EvidenceAnswer {
    std::vector<MomentRow> moments;
    QStringList releases;  ///< in the hours before it and while it lasted
    QString work;          ///< how long was dug then
    QString problem;
};

inline constexpr std::int64_t evidence_before_ms = 12 * ms_per_hour;

/// A book's turbidity for one state of the figures, with a reader of its own. Asked from any thread, one at a
/// time; what it answers points into it.
class TurbidityBook {
 public:
    /// `cache`: where worked-out readings are kept; empty: nowhere.
    TurbidityBook(FiguresMade figures, std::string cache)
        : figures_(std::move(figures)), cache_(std::move(cache)) {}

    [[nodiscard]] const FiguresMade& figures() const { return figures_; }
    ViewAnswer view(const ViewAsked& asked);
    EventsAnswer events();
    EvidenceAnswer evidence(const TriggerRow& row);

 private:
    void open();

    std::mutex mutex_;
    FiguresMade figures_;
    std::string cache_;
    std::unique_ptr<Book> book_;
    std::unique_ptr<ReadingStore> store_;
    std::unique_ptr<TurbidityPlot> plot_;
};

}  // namespace spoilbook::form
