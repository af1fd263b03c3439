// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/release_line.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <algorithm>

#include "forms/shared/label.h"
#include "forms/shared/off_screen.h"
#include "forms/shared/time_typed.h"
#include "model/answer/checked_release.h"
#include "model/answer/named_cell.h"
#include "model/consent/largest_load.h"
#include "model/unit/shown.h"

namespace spoilbook::form {
namespace {

QString words(const char* text) {
    return QCoreApplication::translate("release_line", text);
}

State state_of(CheckState state) {
    if (state == CheckState::hold) return State::hold;
    return state == CheckState::clear ? State::clear : State::unknown;
}

QString reason_words(const CheckReason& reason, const Zone& zone, ReleaseStage stage = ReleaseStage::ahead) {
    const QString condition = QString::fromStdString(reason.condition->condition);
    const QString why = QString::fromStdString(reason.why);
    const QString holds = stage == ReleaseStage::ahead ? words("Condition %1 holds it: %2")
                                                       : words("Condition %1 stands against it: %2");
    const QString said = reason.state == CheckState::hold ? holds : words("Condition %1 cannot be told: %2");
    if (!reason.until) return said.arg(condition, why);
    return words("%1, until %2").arg(said.arg(condition, why), day_and_time_shown(*reason.until, zone));
}

/// The load that is answered for. On a page that still shows the trip before it, it is the next one.
QString load_words(const Season& season, const Id& id) {
    const auto& trips = season.trips.rows();
    const bool under_way = std::any_of(trips.begin(), trips.end(), [&](const Trip& trip) {
        return trip.load == id && trip.departed && !trip.returned;
    });
    const Load* load = season.loads.find(id);
    return (under_way ? words("This load, %1") : words("Next load, %1"))
        .arg(load ? QString::fromStdString(load->load) : QString());
}

QString task_words(const CheckTask& task, const Zone& zone) {
    return words("Condition %1: %2 from %3")
        .arg(QString::fromStdString(task.condition->condition), QString::fromStdString(task.what),
             time_shown(task.from, zone));
}

/// How full she may be made where a limit leaves less than she holds: rounded so that none is passed.
QString largest_words(const LargestLoad& largest) {
    if (largest.bound_by == nullptr) return {};
    const QLocale locale;
    QString said = words("By condition %1 no more than %2 m³ hopper fits")
                       .arg(QString::fromStdString(largest.bound_by->condition),
                            locale.toString(rounded_down(largest.hopper_m3, 0), 'f', 0));
    if (largest.buckets)
        said += words(", %1 buckets in all").arg(locale.toString(rounded_down(*largest.buckets, 0), 'f', 0));
    if (largest.ullage_m)
        said += words(", ullage %1 m").arg(locale.toString(rounded_up(*largest.ullage_m, 2), 'f', 2));
    return said + u'.';
}

}  // namespace

ReleaseWords release_words(const Season& season, const PlannedRelease& asked, const CheckFacts& facts) {
    PlannedRelease planned = asked;
    ReleaseWords out;
    const Ledger ledger(season);
    auto checked = check_release(ledger, planned, facts);
    if (!checked) return {State::unknown, refusals_shown(checked.refusals()), {}, {}, {}};
    out.due_cell = QString::fromStdString(checked->due_cell);
    bool is_offered = false;  // nobody has said where: the cell that is due stands for it, and is named
    if (!planned.cell && !planned.lat) {
        if (const auto named = cells_named(season, checked->due_cell); named.size() == 1) {
            const Cell* due = named.front();
            is_offered = true;
            planned.cell = due->id;
            planned.ground = due->ground;
            if (auto there = check_release(ledger, planned, facts)) checked = std::move(there);
        }
    }
    const Cell* cell = season.cells.find(planned.cell);
    QString where;
    if (cell) where = words(" in %1").arg(QString::fromStdString(cell->cell));
    if (is_offered) where += words(", the cell due");
    if (planned.lat) where += words(" at the position written");
    const QString when = load_words(season, planned.load) +
                         words(", release about %1%2: ").arg(time_shown(planned.at, season.zone), where);
    out.state = state_of(checked->verdict);
    QStringList reasons;
    for (const CheckReason& reason : checked->reasons)
        reasons << reason_words(reason, season.zone);
    out.reasons = reasons.join(u'\n');
    QStringList to_do;
    for (const CheckTask& task : checked->to_do)
        to_do << task_words(task, season.zone);
    out.to_do = to_do.join(u'\n');
    if (checked->verdict == CheckState::clear) {
        out.text = when + words("nothing that is judged stops it.");
    } else {
        for (const CheckReason& reason : checked->reasons) {
            if (reason.state != checked->verdict) continue;
            out.text = when + reason_words(reason, season.zone);
            break;
        }
    }
    for (const QString& task : to_do)
        out.text += u' ' + task + u'.';
    const Load* load = season.loads.find(planned.load);
    if (load && !load->loading_end) {
        if (const auto largest = largest_load(ledger, planned)) {
            const QString said = largest_words(*largest);
            if (!said.isEmpty()) out.text += u' ' + said;
        }
    }
    if (!out.due_cell.isEmpty() && (!cell || out.due_cell != QString::fromStdString(cell->cell)))
        out.text += words(" Cell due: %1.").arg(out.due_cell);
    return out;
}

// The doors are open whatever is said: it tells what to mend or to report, and asks nothing of her.
ReleaseWords opened_words(const Season& season, const PlannedRelease& planned, const CheckFacts& facts) {
    const Ledger ledger(season);
    const auto checked = check_release(ledger, planned, facts);
    if (!checked) return {State::unknown, refusals_shown(checked.refusals()), {}, {}, {}};
    ReleaseWords out;
    out.due_cell = QString::fromStdString(checked->due_cell);
    out.state = state_of(checked->verdict);
    if (checked->verdict == CheckState::hold) out.word = words("against it");
    QStringList reasons;
    QString first;
    for (const CheckReason& reason : checked->reasons) {
        reasons << reason_words(reason, season.zone, ReleaseStage::opened);
        if (first.isEmpty() && reason.state == checked->verdict) first = reasons.back();
    }
    out.reasons = reasons.join(u'\n');
    if (reasons.isEmpty()) return out;
    out.text = load_words(season, planned.load) +
               words(", doors opened %1: %2.").arg(time_shown(planned.at, season.zone), first);
    if (reasons.size() > 1) out.text += words(" And %1 more.").arg(reasons.size() - 1);
    return out;
}

ReleaseLine::ReleaseLine(BookSession& session, QWidget* parent)
    : QWidget(parent),
      session_(session),
      mark_(new StateMark(State::unknown, this)),
      text_(make_label({}, Step::small, Weight::regular, this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    text_->setWordWrap(true);
    row->addWidget(mark_, 0, Qt::AlignTop);
    row->addWidget(text_, 1);
    hide();
}

void ReleaseLine::quiet() {
    asked_.clear();
    ++asked_count_;
    hide();
}

void ReleaseLine::ask(const PlannedRelease& planned, ReleaseStage stage) {
    const Season& season = session_.season();
    const Load* load = season.loads.find(planned.load);
    if (!load) return quiet();
    // Buckets do not change the answer before she is full: asked again only where something that counts did.
    double buckets = 0;
    for (const Tally& tally : season.tallies.rows()) {
        const Load* into = season.loads.find(tally.load);
        if (into && into->loading_end) buckets += tally.count.value_or(0) + tally.part_buckets.value_or(0);
    }
    const std::int64_t at = stage == ReleaseStage::opened
                                ? planned.at.utc_ms
                                : (planned.at.utc_ms / (10 * ms_per_minute) + 1) * 10 * ms_per_minute;
    const QString question = QStringLiteral("%1 %2 %3 %4 %5 %6 %7 %8 %9")
                                 .arg(QString::fromStdString(hex(planned.load)))
                                 .arg(stage == ReleaseStage::opened ? -at : at)
                                 .arg(QString::fromStdString(hex(planned.ground)))
                                 .arg(QString::fromStdString(hex(planned.cell)))
                                 .arg(planned.wave_height_m.value_or(-1))
                                 .arg(buckets)
                                 .arg(session_.writes_that_count())
                                 .arg(planned.lat.value_or(0), 0, 'f', 7)
                                 .arg(planned.lon.value_or(0), 0, 'f', 7);
    if (question == asked_) return;
    asked_ = question;
    const int mine = ++asked_count_;
    PlannedRelease rounded = planned;
    rounded.at = Instant{at};
    auto own = std::make_shared<const Season>(season);
    off_screen<ReleaseWords>(
        *QThreadPool::globalInstance(), this,
        [own, rounded, stage, path = session_.book().path(), now = session_.now()]() -> ReleaseWords {
            const auto say = stage == ReleaseStage::opened ? opened_words : release_words;
            try {
                if (!asks_the_book(*own)) return say(*own, rounded, no_facts());
                // A reader of this thread's own: the session's is the screen's.
                const auto book = Book::open_to_read(path);
                if (!book) return {State::unknown, refusals_shown(book.refusals()), {}, {}, {}};
                return say(*own, rounded, check_facts(*book, *own, rounded.at, now));
            } catch (const std::exception& error) {
                return {State::unknown, QString::fromUtf8(error.what()), {}, {}, {}};
            }
        },
        [this, mine](const ReleaseWords& answer) {
            if (mine == asked_count_) show_words(answer);
        });
}

void ReleaseLine::show_words(const ReleaseWords& answer) {
    mark_->show_state(answer.state, answer.word);
    text_->setText(answer.text);
    text_->setToolTip(answer.reasons);
    setAccessibleName(answer.text);
    setVisible(!answer.text.isEmpty());
    emit due_cell(answer.due_cell);
}

}  // namespace spoilbook::form
