// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/ledger.h"

#include <algorithm>

namespace spoilbook {

namespace {

std::optional<double> hours_between(std::optional<Instant> from, std::optional<Instant> to) {
    if (!from || !to) return std::nullopt;
    return static_cast<double>(*to - *from) / static_cast<double>(ms_per_hour);
}

void sort_by_time(std::vector<LedgerLine>& lines) {
    std::stable_sort(lines.begin(), lines.end(),
                     [](const LedgerLine& a, const LedgerLine& b) { return a.at < b.at; });
}

}  // namespace

Ledger::Done::Done(const Season& of)
    : season(of),
      index(of, sources),
      grounds(of),
      releases(releases_of(of)),
      figures(valued()),
      counted(figures) {
    list_dredged();
}

std::vector<LoadFigures> Ledger::Done::valued() const {
    std::vector<LoadFigures> valued;
    valued.reserve(season.loads.size());
    for (const auto& load : season.loads.rows())
        valued.push_back(spoilbook::figures(index, load));
    return valued;
}

void Ledger::Done::put_load(const Load& load, LedgerLine& line) const {
    line.load = &load;
    line.load_number = static_cast<std::uint32_t>(&load - season.loads.rows().data());
    line.figures = &figures[line.load_number];
    line.counted = &counted[line.load_number];
    line.material = load.material;
    line.barge = load.barge;
}

void Ledger::Done::list_dredged() {
    dredged.reserve(season.loads.size());
    for (const auto& load : season.loads.rows()) {
        if (!load.loading_end) continue;
        LedgerLine line;
        line.at = *load.loading_end;
        put_load(load, line);
        line.trip_number = line.load_number;
        line.day = season.zone.day_of(line.at);
        line.hours = hours_between(load.loading_start, load.loading_end);
        dredged.push_back(line);
    }
    sort_by_time(dredged);
}

Ledger::Ledger(const Season& season) : done_(std::make_shared<const Done>(season)) {
    list_released();
}

Ledger::Ledger(const Ledger& done, std::vector<Trip> instead, std::optional<LoadFigures> figures_of_first,
               std::unordered_map<Id, double> rest_of)
    : done_(done.done_),
      next_trip_(done.next_trip_),
      instead_(std::move(instead)),
      rest_of_(std::move(rest_of)),
      figures_of_first_(std::move(figures_of_first)) {
    if (figures_of_first_) counted_of_first_.emplace(std::span(&*figures_of_first_, 1));
    std::unordered_map<const Load*, const Trip*> theirs;
    instead_releases_.reserve(instead_.size());
    for (const auto& trip : instead_) {
        const Load* load = season().loads.find(trip.load);
        if (load != nullptr) theirs.emplace(load, &trip);
        instead_releases_.push_back(release_of_trip(trip, load));
        instead_releases_.back().share = this->rest_of(trip.load).value_or(1);
    }
    const auto stays = [&](const LedgerLine& line) {
        const auto own = theirs.find(line.load);
        if (own == theirs.end()) return true;
        return rest_of_.contains(line.load->id) && line.at <= own->second->release_end;
    };
    released_.reserve(done.released_.size() + instead_.size());
    std::copy_if(done.released_.begin(), done.released_.end(), std::back_inserter(released_), stays);
    for (const auto& release : instead_releases_) {
        LedgerLine line = line_of(release, next_trip_++);
        if (figures_of_first_ && release.trip == &instead_.front()) {
            line.figures = &*figures_of_first_;
            line.counted = &(*counted_of_first_)[0];
        }
        const auto after = std::upper_bound(released_.begin(), released_.end(), line.at,
                                            [](Instant t, const LedgerLine& other) { return t < other.at; });
        released_.insert(after, line);
    }
}

std::optional<double> Ledger::rest_of(const Id& load) const {
    const auto rest = rest_of_.find(load);
    return rest == rest_of_.end() ? std::nullopt : std::optional(rest->second);
}

const LoadFigures* Ledger::figures_of(const Id& load) const {
    if (figures_of_first_ && load == instead_.front().load) return &*figures_of_first_;
    const Load* row = season().loads.find(load);
    return row == nullptr ? nullptr
                          : &done_->figures[static_cast<std::size_t>(row - season().loads.rows().data())];
}

/// The release must have ended.
LedgerLine Ledger::line_of(const ReleaseView& release, std::uint32_t trip_number) const {
    LedgerLine line;
    line.at = *release.ended;
    line.release = &release;
    line.trip_number = trip_number;
    if (release.load != nullptr) done_->put_load(*release.load, line);
    line.share = release.share;
    line.ground = release.ground;
    line.cell = release.cell ? release.cell : grounds().cell_at(release);
    line.day = season().zone.day_of(line.at);
    line.hours = hours_between(release.opened, release.shut);
    return line;
}

void Ledger::list_released() {
    auto without_load = static_cast<std::uint32_t>(done_->figures.size());
    const Trip* numbered = nullptr;  // the releases of a trip follow one another
    released_.reserve(all_releases().size());
    for (const auto& release : all_releases()) {
        if (release.trip != numbered) ++next_trip_;
        numbered = release.trip;
        if (!release.counts || !release.ended) continue;
        released_.push_back(line_of(release, next_trip_ - 1));
        if (release.load == nullptr) released_.back().load_number = without_load++;
    }
    sort_by_time(released_);
}

std::span<const LedgerLine> lines_between(const std::vector<LedgerLine>& lines, std::optional<Instant> from,
                                          std::optional<Instant> to) {
    const auto is_before = [](const LedgerLine& line, Instant t) { return line.at < t; };
    const auto is_after = [](Instant t, const LedgerLine& line) { return t < line.at; };
    const auto first = from ? std::lower_bound(lines.begin(), lines.end(), *from, is_before) : lines.begin();
    const auto last = to ? std::upper_bound(first, lines.end(), *to, is_after) : lines.end();
    return {first, last};
}

const MethodResult* counted_method(const LedgerLine& line, const std::string& method, Measure measure) {
    if (line.figures == nullptr) return nullptr;
    return line.figures->counted_by(method.empty() ? std::nullopt : method_named(method), measure);
}

std::optional<Estimate> dredged_amount(const LedgerLine& line, const std::string& method, Measure measure) {
    const auto* result = counted_method(line, method, measure);
    if (result == nullptr) return std::nullopt;
    if (result->dredged_by_part.empty()) return result->of(measure);
    std::optional<Estimate> sum;
    for (const auto& amounts : result->dredged_by_part) {
        const auto& amount = amounts.of(measure);
        if (!amount) return std::nullopt;
        sum = sum ? together(*sum, *amount) : *amount;
    }
    return sum;
}

}  // namespace spoilbook
