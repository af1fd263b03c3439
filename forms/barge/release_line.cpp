// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/release_line.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QLabel>

#include "forms/shared/label.h"
#include "forms/shared/off_screen.h"
#include "forms/shared/time_typed.h"
#include "model/answer/named_cell.h"
#include "model/consent/release_check.h"

namespace spoilbook::form {
namespace {

QString words(const char* text) {
    return QCoreApplication::translate("release_line", text);
}

State state_of(CheckState state) {
    if (state == CheckState::hold) return State::hold;
    return state == CheckState::clear ? State::clear : State::unknown;
}

QString reason_words(const CheckReason& reason, const Zone& zone) {
    const QString condition = QString::fromStdString(reason.condition->condition);
    const QString why = QString::fromStdString(reason.why);
    const QString said = reason.state == CheckState::hold ? words("Condition %1 holds it: %2")
                                                          : words("Condition %1 cannot be told: %2");
    if (!reason.until) return said.arg(condition, why);
    return words("%1, until %2").arg(said.arg(condition, why), day_and_time_shown(*reason.until, zone));
}

}  // namespace

ReleaseWords release_words(const Season& season, PlannedRelease planned) {
    ReleaseWords out;
    auto checked = check_release(season, planned);
    if (!checked) return {State::unknown, refusals_shown(checked.refusals()), {}, {}};
    out.due_cell = QString::fromStdString(checked->due_cell);
    if (!planned.cell && !planned.lat) {
        if (const auto named = cells_named(season, checked->due_cell); named.size() == 1) {
            const Cell* due = named.front();
            planned.cell = due->id;
            planned.ground = due->ground;
            if (auto there = check_release(season, planned)) checked = std::move(there);
        }
    }
    const Cell* cell = season.cells.find(planned.cell);
    const QString where = cell ? words(" in %1").arg(QString::fromStdString(cell->cell)) : QString();
    const QString when = words("Release about %1%2: ").arg(time_shown(planned.at, season.zone), where);
    out.state = state_of(checked->verdict);
    QStringList reasons;
    for (const CheckReason& reason : checked->reasons)
        reasons << reason_words(reason, season.zone);
    out.reasons = reasons.join(u'\n');
    if (checked->verdict == CheckState::clear) {
        out.text = when + words("nothing in the consent stops it.");
    } else {
        for (const CheckReason& reason : checked->reasons) {
            if (reason.state != checked->verdict) continue;
            out.text = when + reason_words(reason, season.zone);
            break;
        }
    }
    if (!out.due_cell.isEmpty() && (!cell || out.due_cell != QString::fromStdString(cell->cell)))
        out.text += words(" Cell due: %1.").arg(out.due_cell);
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

void ReleaseLine::ask(const PlannedRelease& planned) {
    const Season& season = session_.season();
    const Load* load = season.loads.find(planned.load);
    if (!load) return quiet();
    // Buckets do not change the answer before she is full: asked again only where something that counts did.
    double buckets = 0;
    for (const Tally& tally : season.tallies.rows()) {
        const Load* into = season.loads.find(tally.load);
        if (into && into->loading_end) buckets += tally.count.value_or(0) + tally.part_buckets.value_or(0);
    }
    const std::int64_t at = (planned.at.utc_ms / (10 * ms_per_minute) + 1) * 10 * ms_per_minute;
    const QString question = QStringLiteral("%1 %2 %3 %4 %5 %6 %7")
                                 .arg(QString::fromStdString(hex(planned.load)))
                                 .arg(at)
                                 .arg(QString::fromStdString(hex(planned.ground)))
                                 .arg(QString::fromStdString(hex(planned.cell)))
                                 .arg(planned.wave_height_m.value_or(-1))
                                 .arg(buckets)
                                 .arg(session_.writes_that_count());
    if (question == asked_) return;
    asked_ = question;
    const int mine = ++asked_count_;
    PlannedRelease rounded = planned;
    rounded.at = Instant{at};
    auto own = std::make_shared<const Season>(season);
    off_screen<ReleaseWords>(
        *QThreadPool::globalInstance(), this,
        [own, rounded]() -> ReleaseWords {
            try {
                return release_words(*own, rounded);
            } catch (const std::exception& error) {
                return {State::unknown, QString::fromUtf8(error.what()), {}, {}};
            }
        },
        [this, mine](const ReleaseWords& answer) {
            if (mine == asked_count_) show_words(answer);
        });
}

void ReleaseLine::show_words(const ReleaseWords& answer) {
    mark_->show_state(answer.state);
    text_->setText(answer.text);
    text_->setToolTip(answer.reasons);
    setAccessibleName(answer.text);
    setVisible(true);
    emit due_cell(answer.due_cell);
}

}  // namespace spoilbook::form
