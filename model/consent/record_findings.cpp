// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>
#include <span>

#include "model/consent/allowed_sets.h"
#include "model/consent/findings.h"
#include "model/consent/limit.h"

namespace spoilbook {

namespace {

using nlohmann::json;

/// What is blank may still be logged for so long.
constexpr std::int64_t time_to_log_ms = 24 * ms_per_hour;

/// Where trips.csv has what a column of releases.csv asks for, of the one release of an ordinary trip.
std::string trip_column(const std::string& column) {
    if (column == "doors_open") return "release_start";
    if (column == "empty" || column == "doors_shut") return "release_end";
    return column;
}

/// A column asked for, and where rows of a kind have it.
struct Asked {
    std::string column;
    std::optional<std::size_t> place;  ///< nothing: they have not

    Asked(const HeldColumns& held, std::string name)
        : column(std::move(name)), place(held.place_of(column)) {}
};

/// A column asked for of a release, in releases.csv or, of an ordinary trip's, in trips.csv.
struct AskedOfRelease {
    Asked own, of_trip;
};

/// What of the columns asked for is blank.
struct Blank {
    std::string words;      ///< of the columns, with a comma between
    std::string no_column;  ///< one that there is not

    /// `row`: what it holds; null: there is no such row, and it holds nothing.
    void look(const HeldColumns& held, const std::vector<bool>* row, const Asked& asked) {
        if (!asked.place)
            no_column = asked.column;
        else if (row == nullptr || *asked.place >= row->size() || !(*row)[*asked.place])
            words += (words.empty() ? "" : ", ") + held.words(asked.column);
    }
};

class RecordJudge {
 public:
    RecordJudge(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                const RecordColumns& columns)
        : ledger_(ledger),
          condition_(condition),
          span_(span),
          columns_(columns),
          body_(body_of(condition)),
          applies_(ledger.season(), body_) {}

    std::vector<Finding> run() {
        if (!body_.is_object()) return {};
        judge_trips();
        merge_in_order_of_time();
        judge_loads();
        merge_in_order_of_time();
        judge_releases();
        merge_in_order_of_time();
        return std::move(findings_);
    }

 private:
    /// A trip or a load, to be judged in order of time: findings are too large to be sorted afterwards.
    template <class R>
    struct Dated {
        Instant at;
        const R* row;
        std::span<const ReleaseView> releases;  ///< of a trip

        static void sort(std::vector<Dated>& all) {
            std::stable_sort(all.begin(), all.end(),
                             [](const Dated& a, const Dated& b) { return a.at < b.at; });
        }
    };

    /// Those put last among those before them; both are in order.
    void merge_in_order_of_time() {
        std::inplace_merge(findings_.begin(), findings_.begin() + static_cast<std::ptrdiff_t>(in_order_),
                           findings_.end(), [](const Finding& a, const Finding& b) { return a.at < b.at; });
        in_order_ = findings_.size();
    }

    [[nodiscard]] std::vector<std::string> required(const char* of) const {
        if (!body_.contains("required")) return {};
        return body_.at("required").value(of, std::vector<std::string>{});
    }

    [[nodiscard]] std::vector<Asked> asked(const char* of, const HeldColumns& held) const {
        std::vector<Asked> asked;
        for (auto& column : required(of))
            asked.emplace_back(held, std::move(column));
        return asked;
    }

    /// Whether the condition judges what happened then, in that place and with that load: nothing, it does
    /// not; else what is not recorded and leaves that open.
    [[nodiscard]] std::optional<std::string> judges(const LedgerLine& line) const {
        if (!span_.has(line.at) || !in_force(condition_, line.at)) return std::nullopt;
        if (applies_(line)) return "";
        auto not_recorded = applies_.not_recorded(line);
        return not_recorded.empty() ? std::nullopt : std::optional(std::move(not_recorded));
    }

    /// A trip is judged where any of its releases is; without one, by its load.
    [[nodiscard]] std::optional<std::string> judges_trip(const Trip& trip,
                                                         std::span<const ReleaseView> releases,
                                                         Instant at) const {
        const Load* load = ledger_.season().loads.find(trip.load);
        if (releases.empty()) return judges(line_of(load, nullptr, at));
        std::optional<std::string> judged;
        for (const auto& release : releases) {
            auto one = judges(line_of(load, &release, at));
            if (one && (!judged || one->empty())) judged = std::move(one);
        }
        return judged;
    }

    [[nodiscard]] LedgerLine line_of(const Load* load, const ReleaseView* release, Instant at) const {
        LedgerLine line;
        line.at = at;
        line.load = load;
        if (load != nullptr) line.material = load->material;
        if (load != nullptr) line.barge = load->barge;
        if (load != nullptr && applies_.by_part()) line.figures = ledger_.figures_of(load->id);
        line.release = release;
        if (release == nullptr) return line;
        line.ground = release->ground;
        line.cell = release->cell ? release->cell : ledger_.grounds().cell_at(*release);
        return line;
    }

    static Blank blank_of(const HeldColumns& held, const Id& row, const std::vector<Asked>& columns) {
        Blank blank;
        const auto* own = held.of(row);
        for (const auto& asked : columns)
            blank.look(held, own, asked);
        return blank;
    }

    [[nodiscard]] Blank blank_of(const ReleaseView& release,
                                 const std::vector<AskedOfRelease>& columns) const {
        Blank blank;
        const auto* own = release.row != nullptr ? columns_.releases.of(release.row->id)
                                                 : columns_.trips.of(release.trip->id);
        for (const auto& [asked, of_trip] : columns) {
            if (release.row != nullptr) {
                // A blank ground is the trip's.
                if (asked.column != "ground" || !release.ground) blank.look(columns_.releases, own, asked);
            } else if (of_trip.place) {
                blank.look(columns_.trips, own, of_trip);
            } else if (asked.column != "share") {  // an ordinary trip's one release takes all of the load
                blank.look(columns_.releases, nullptr, asked);
            }
        }
        return blank;
    }

    void put(Finding found, const Blank& blank, const std::string& not_recorded) {
        if (!blank.words.empty() && span_.as_at - found.at < time_to_log_ms) return;
        found.state = Compliance::complied;
        if (!blank.no_column.empty()) {
            found.state = Compliance::cannot_tell;
            found.why = "the book has no column " + blank.no_column;
        }
        if (!blank.words.empty()) {
            found.state = Compliance::breached;
            found.why = "not recorded: " + blank.words;
        }
        add(std::move(found), not_recorded);
    }

    void add(Finding found, const std::string& not_recorded) {
        if (put_in_doubt(found, not_recorded)) findings_.push_back(std::move(found));
    }

    void judge_trips() {
        const auto columns = asked("trip", columns_.trips);
        if (columns.empty()) return;
        const Season& season = ledger_.season();
        std::vector<Dated<Trip>> trips;
        trips.reserve(season.trips.size());
        auto next = ledger_.all_releases().begin();  // in the order of the trips
        const auto end = ledger_.all_releases().end();
        for (const auto& trip : season.trips.rows()) {
            const auto first = next;
            while (next != end && next->trip == &trip)
                ++next;
            const auto at = trip.returned      ? trip.returned
                            : trip.release_end ? trip.release_end
                                               : trip.departed;
            if (at) trips.push_back({*at, &trip, {first, next}});
        }
        Dated<Trip>::sort(trips);
        findings_.reserve(trips.size());
        for (const auto& [at, trip, releases] : trips) {
            const auto judged = judges_trip(*trip, releases, at);
            if (!judged) continue;
            Finding found =
                finding_on(ledger_, condition_, line_of(season.loads.find(trip->load), nullptr, at));
            found.trip = trip;
            put(std::move(found), blank_of(columns_.trips, trip->id, columns), *judged);
        }
    }

    void judge_loads() {
        const auto columns = asked("load", columns_.loads);
        if (columns.empty()) return;
        std::vector<Dated<Load>> loads;
        loads.reserve(ledger_.season().loads.size());
        for (const auto& load : ledger_.season().loads.rows()) {
            const auto at = load.loading_end ? load.loading_end : load.loading_start;
            if (at) loads.push_back({*at, &load, {}});
        }
        Dated<Load>::sort(loads);
        findings_.reserve(findings_.size() + loads.size());
        for (const auto& [at, load, releases] : loads) {
            const auto line = line_of(load, nullptr, at);
            if (const auto judged = judges(line))
                put(finding_on(ledger_, condition_, line), blank_of(columns_.loads, load->id, columns),
                    *judged);
        }
    }

    void judge_releases() {
        std::vector<AskedOfRelease> columns;
        for (const auto& column : required("release"))
            columns.push_back({{columns_.releases, column}, {columns_.trips, trip_column(column)}});
        const bool has_bound = body_.contains("bounds") && body_.at("bounds").contains("draught_lost_m");
        for (const auto& line : ledger_.released()) {
            const auto in = judges(line);
            if (!in) continue;
            const Finding found = finding_on(ledger_, condition_, line);
            if (!columns.empty()) put(found, blank_of(*line.release, columns), *in);
            if (body_.contains("allowed")) {
                auto allowed = allowed_sets(body_, ledger_, line);
                Finding judged = found;
                judged.state = allowed.state;
                judged.why = std::move(allowed.why);
                add(std::move(judged), *in);
            }
            if (!has_bound) continue;
            Finding bound = found;
            bound.why = "draughts before the release are not in the book";
            add(std::move(bound), *in);
        }
    }

    const Ledger& ledger_;
    const Condition& condition_;
    const JudgedSpan& span_;
    const RecordColumns& columns_;
    json body_;
    AppliesTo applies_;
    std::vector<Finding> findings_;
    std::size_t in_order_ = 0;  ///< so many of the first are in order of time
};

}  // namespace

std::vector<Finding> record_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                     const RecordColumns& columns) {
    return RecordJudge(ledger, condition, span, columns).run();
}

}  // namespace spoilbook
