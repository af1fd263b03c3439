// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>
#include <unordered_map>

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

/// What of the columns asked for is blank.
struct Blank {
    std::string words;      ///< of the columns, with a comma between
    std::string no_column;  ///< one that there is not

    void look(const HeldColumns& columns, const Id& row, const std::string& column) {
        const auto held = columns.holds(row, column);
        if (!held) no_column = column;
        if (!held.value_or(true)) words += (words.empty() ? "" : ", ") + columns.words(column);
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
        judge_loads();
        judge_releases();
        std::stable_sort(findings_.begin(), findings_.end(),
                         [](const Finding& a, const Finding& b) { return a.at < b.at; });
        return std::move(findings_);
    }

 private:
    [[nodiscard]] std::vector<std::string> required(const char* of) const {
        if (!body_.contains("required")) return {};
        return body_.at("required").value(of, std::vector<std::string>{});
    }

    /// Whether the condition judges what happened then, in that place and with that load.
    [[nodiscard]] bool judges(const LedgerLine& line) const {
        return span_.has(line.at) && in_force(condition_, line.at) && applies_(line);
    }

    [[nodiscard]] LedgerLine line_of(const Load* load, const ReleaseView* release, Instant at) const {
        LedgerLine line;
        line.at = at;
        line.load = load;
        line.figures = load == nullptr ? nullptr : ledger_.figures_of(load->id);
        line.release = release;
        if (release != nullptr) line.ground = release->ground;
        if (release != nullptr) line.cell = release->cell;
        return line;
    }

    static Blank blank_of(const HeldColumns& held, const Id& row, const std::vector<std::string>& columns) {
        Blank blank;
        for (const auto& column : columns)
            blank.look(held, row, column);
        return blank;
    }

    [[nodiscard]] Blank blank_of(const ReleaseView& release, const std::vector<std::string>& columns) const {
        if (release.row != nullptr && release.ground) {
            // A blank ground is the trip's.
            auto others = columns;
            std::erase(others, "ground");
            return blank_of(columns_.releases, release.row->id, others);
        }
        if (release.row != nullptr) return blank_of(columns_.releases, release.row->id, columns);
        Blank blank;
        for (const auto& column : columns) {
            const std::string there = trip_column(column);
            if (columns_.trips.holds(release.trip->id, there))
                blank.look(columns_.trips, release.trip->id, there);
            else if (column != "share")  // the one release of an ordinary trip takes all of the load
                blank.look(columns_.releases, Id{}, column);
        }
        return blank;
    }

    void put(Finding found, const Blank& blank) {
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
        findings_.push_back(std::move(found));
    }

    void judge_trips() {
        const auto columns = required("trip");
        if (columns.empty()) return;
        std::unordered_map<Id, const ReleaseView*> release_of;
        for (const auto& release : ledger_.all_releases())
            release_of.emplace(release.trip->id, &release);
        const Season& season = ledger_.season();
        for (const auto& trip : season.trips.rows()) {
            const auto at = trip.returned      ? trip.returned
                            : trip.release_end ? trip.release_end
                                               : trip.departed;
            if (!at) continue;
            const auto release = release_of.find(trip.id);
            const auto line = line_of(season.loads.find(trip.load),
                                      release == release_of.end() ? nullptr : release->second, *at);
            if (!judges(line)) continue;
            Finding found = finding_on(ledger_, condition_, line);
            found.release = nullptr;
            found.trip = &trip;
            put(std::move(found), blank_of(columns_.trips, trip.id, columns));
        }
    }

    void judge_loads() {
        const auto columns = required("load");
        if (columns.empty()) return;
        for (const auto& load : ledger_.season().loads.rows()) {
            const auto at = load.loading_end ? load.loading_end : load.loading_start;
            if (!at) continue;
            const auto line = line_of(&load, nullptr, *at);
            if (judges(line))
                put(finding_on(ledger_, condition_, line), blank_of(columns_.loads, load.id, columns));
        }
    }

    void judge_releases() {
        const auto columns = required("release");
        const bool has_bound = body_.contains("bounds") && body_.at("bounds").contains("draught_lost_m");
        for (const auto& line : ledger_.released()) {
            if (!judges(line)) continue;
            const Finding found = finding_on(ledger_, condition_, line);
            if (!columns.empty()) put(found, blank_of(*line.release, columns));
            if (body_.contains("allowed")) {
                auto allowed = allowed_sets(body_, ledger_, line);
                Finding judged = found;
                judged.state = allowed.state;
                judged.why = std::move(allowed.why);
                findings_.push_back(std::move(judged));
            }
            if (!has_bound) continue;
            findings_.push_back(found);
            findings_.back().why = "draughts before the release are not in the book";
        }
    }

    const Ledger& ledger_;
    const Condition& condition_;
    const JudgedSpan& span_;
    const RecordColumns& columns_;
    json body_;
    AppliesTo applies_;
    std::vector<Finding> findings_;
};

}  // namespace

std::vector<Finding> record_findings(const Ledger& ledger, const Condition& condition, const JudgedSpan& span,
                                     const RecordColumns& columns) {
    return RecordJudge(ledger, condition, span, columns).run();
}

}  // namespace spoilbook
