// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/turbidity_source.h"

#include <QCoreApplication>
#include <algorithm>

#include "forms/works/say.h"
#include "model/book/book_error.h"
#include "model/progress/shift_hours.h"
#include "model/record/release_view.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("TurbidityLeaf", text);
}

std::unique_ptr<Book> reader_of(const std::string& path) {
    auto opened = Book::open_to_read(path);
    if (!opened) throw std::runtime_error(one_line(opened.refusals().front()));
    return std::make_unique<Book>(std::move(*opened));
}

constexpr std::int64_t newest_ms = 14 * ms_per_day;

}  // namespace

void TurbidityBook::open() {
    if (plot_) return;
    book_ = reader_of(figures_->book);
    if (!cache_.empty()) {
        try {
            store_ = std::make_unique<ReadingStore>(cache_);
        } catch (const BookError&) {
            store_.reset();  // Slower, and the same answers.
        }
    }
    plot_ = std::make_unique<TurbidityPlot>(*book_, figures_->season, figures_->as_at, store_.get());
}

ViewAnswer TurbidityBook::view(const ViewAsked& asked) {
    const std::scoped_lock held(mutex_);
    ViewAnswer answer;
    try {
        open();
        answer.extent = plot_->extent(asked.sites);
        if (!answer.extent) return answer;
        Period window = asked.window.value_or(
            Period{std::max(answer.extent->from, answer.extent->to - newest_ms), answer.extent->to});
        answer.view = std::make_shared<TurbidityView>(plot_->view(asked.sites, window, asked.columns));
        for (const std::string& site : asked.sites) {
            const auto rows = reading_rows(site, plot_->readings(site, window, most_reading_rows));
            answer.readings.insert(answer.readings.end(), rows.begin(), rows.end());
        }
    } catch (const std::exception& error) {
        answer.problem = QString::fromUtf8(error.what());
    }
    return answer;
}

/// By a reader of its own: finding events walks through all readings, and a plot does not wait for that.
EventsAnswer TurbidityBook::events() {
    EventsAnswer answer;
    try {
        const auto book = reader_of(figures_->book);
        const Season& season = figures_->season;
        const Instant as_at = figures_->as_at;
        TurbidityWatch watch(*book, season, as_at);
        if (!watch.unread().empty()) answer.problem = refusals_shown(watch.unread());
        const auto states = watch.states();
        for (const EventAnswer& passed : event_answers(watch, season, as_at))
            answer.events.push_back(trigger_row(passed, watch.site(passed.record.event.site), as_at));
        for (const Site& site : watch.sites())
            answer.stands[site.site] = site_stands(states, site.site, as_at, season.zone, QLocale());
        std::stable_sort(answer.events.begin(), answer.events.end(),
                         [](const TriggerRow& a, const TriggerRow& b) { return a.start > b.start; });
        answer.months = month_rows(watch, season.zone);
        answer.digging = digging_periods(season, as_at);
        answer.releasing = work_periods(season, as_at, "release");
        std::sort(answer.releasing.begin(), answer.releasing.end());
    } catch (const std::exception& error) {
        answer.problem = QString::fromUtf8(error.what());
    }
    return answer;
}

EvidenceAnswer TurbidityBook::evidence(const TriggerRow& row) {
    const std::scoped_lock held(mutex_);
    EvidenceAnswer answer;
    try {
        open();
        const auto add = [&](const QString& what, Instant at) {
            const auto view = plot_->view({row.site.toStdString()}, {at, at + 1}, 1);
            MomentRow moment{what, at, {}, {}, {}};
            for (const ViewSite& site : view.sites) {
                for (const ViewTrace& trace : site.traces) {
                    if (QString::fromStdString(trace.of.number) != row.condition || trace.steps.empty())
                        continue;
                    const ViewStep& step = trace.steps.front();
                    moment = {what, at, step.statistic_high, step.control, step.level_low};
                }
            }
            answer.moments.push_back(moment);
        };
        add(tr("first over"), row.over_since);
        add(tr("passed"), row.start);
        add(tr("peak"), row.peak_at);
        if (row.end) add(tr("all-clear"), *row.end);
        const Season& season = figures_->season;
        const Period span{row.over_since - evidence_before_ms, row.end.value_or(figures_->as_at)};
        for (const ReleaseView& release : releases_of(season)) {
            if (!release.ended || !span.contains(*release.ended)) continue;
            answer.releases << tr("%1 at %2")
                                   .arg(QString::fromStdString(release.named()),
                                        moment_shown(*release.ended, season.zone, QLocale()));
        }
        std::int64_t dug = 0;
        for (const Period& period : inside(digging_periods(season, figures_->as_at), span))
            dug += period.to - period.from;
        answer.work = tr("Digging for %1 of the %2 from 12 h before it was first over.")
                          .arg(span_shown(dug), span_shown(span.to - span.from));
    } catch (const std::exception& error) {
        answer.problem = QString::fromUtf8(error.what());
    }
    return answer;
}

}  // namespace spoilbook::form
