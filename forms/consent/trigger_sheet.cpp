// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/trigger_sheet.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/table_view.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "forms/shared/type_scale.h"
#include "forms/works/say.h"
#include "model/logging/log_record.h"
#include "model/record/watchkeeping.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

std::vector<Column<MomentRow>> moment_columns(const Zone& zone, const QString& unit, const QLocale& locale) {
    using Row = MomentRow;
    const auto value = [&](const QString& title, std::optional<double> Row::*member) {
        return Column<Row>(title, unit,
                           [=](const Row& row) {
                               return row.*member ? number_shown(*(row.*member), 1, locale)
                                                  : QStringLiteral("–");
                           })
            .number([member](const Row& row) { return row.*member; });
    };
    return {
        Column<Row>(QString(), {}, [](const Row& row) { return row.what; }),
        Column<Row>(TriggerSheet::tr("At"), {},
                    [=](const Row& row) { return moment_shown(row.at, zone, locale); })
            .copied_as([=](const Row& row) { return QString::fromStdString(instant_text(row.at, zone)); }),
        value(TriggerSheet::tr("Statistic"), &Row::statistic),
        value(TriggerSheet::tr("Control"), &Row::control), value(TriggerSheet::tr("Level"), &Row::level)};
}

}  // namespace

TriggerSheet::TriggerSheet(BookSession& session, TriggerRow row, QWidget* parent)
    : QWidget(parent), session_(session), row_(std::move(row)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    auto* state = new StateMark(row_.state, this);
    state->show_state(row_.state, row_.word);
    all->addWidget(state, 0, Qt::AlignLeft);
    QString words = tr("Tier %1: %2 of %3 at %4.").arg(row_.tier, row_.statistic, row_.unit, row_.site);
    if (!row_.responses.isEmpty()) words += u' ' + tr("The consent asks: %1.").arg(row_.responses);
    if (row_.due) {
        words += u' ' + tr("Due %1").arg(moment_shown(*row_.due, session_.zone(), QLocale()));
        words += row_.clock.isEmpty() ? QStringLiteral(".") : QStringLiteral(", %1.").arg(row_.clock);
    }
    auto* what = make_label(words, Step::strong, Weight::regular, this);
    what->setWordWrap(true);
    all->addWidget(what);
    build_evidence();
    build_answer();
    all->addStretch();
}

void TriggerSheet::build_evidence() {
    auto* all = qobject_cast<QVBoxLayout*>(layout());
    moments_ = new TableView(tr("evidence"), this);
    moment_rows_ = new RowTable<MomentRow>(moment_columns(session_.zone(), row_.unit, QLocale()), moments_);
    moments_->set_model(moment_rows_);
    moments_->set_empty_text(tr("Looking the readings up …"));
    moments_->setMinimumHeight(25 * grid);
    all->addWidget(moments_);
    work_ = make_label({}, Step::body, Weight::regular, this);
    work_->setWordWrap(true);
    all->addWidget(work_);
}

void TriggerSheet::show_evidence(const EvidenceAnswer& evidence) {
    if (!evidence.problem.isEmpty()) {
        moments_->set_empty_text(evidence.problem);
        return;
    }
    moment_rows_->set_rows(evidence.moments);
    moments_->table()->resizeColumnsToContents();
    constexpr int most = 6;
    QString releases = evidence.releases.mid(0, most).join(QStringLiteral(", "));
    if (evidence.releases.size() > most) releases += tr(" and %1 more").arg(evidence.releases.size() - most);
    work_->setText(evidence.work + u' ' +
                   (releases.isEmpty() ? tr("No release in that time.") : tr("Releases: %1.").arg(releases)));
}

/// Whether the return still misses something that can be written here.
bool TriggerSheet::open_yet() const {
    const bool unnamed = !row_.answer.isEmpty() && row_.said.event.empty();
    return !unnamed && (row_.answer.isEmpty() || !row_.lacking.isEmpty());
}

/// What was said, then a box for each part that is not.
void TriggerSheet::build_answer() {
    auto* all = qobject_cast<QVBoxLayout*>(layout());
    const auto tell = [&](const QString& text, Weight weight) {
        auto* label = make_label(text, Step::body, weight, this);
        label->setWordWrap(true);
        all->addWidget(label);
    };
    const Event& said = row_.said;
    if (!said.action.empty())
        tell(tr("Answered (%1): %2").arg(row_.answer, book_text(said.action)), Weight::semibold);
    if (!row_.lacking.isEmpty())
        tell(tr("The return still misses: %1.").arg(row_.lacking.join(QStringLiteral(", "))),
             Weight::regular);
    if (!open_yet()) return;
    auto* boxes = new QGridLayout;
    boxes->setHorizontalSpacing(2 * grid);
    if (said.action.empty()) {
        done_ = new TextField(tr("What was done"), {}, this);
        boxes->addWidget(done_, 0, 0, 1, 2, Qt::AlignTop);
    }
    if (said.told.empty()) {
        whom_ = new TextField(tr("Whom told"), {}, this);
        if (!row_.to.isEmpty()) whom_->offer(row_.to, tr("the consent names them"));
        const auto context = [this] { return TimeContext{session_.zone(), session_.now(), {}}; };
        told_ = new TimeField(tr("Told at"), context, this);
        boxes->addWidget(whom_, 1, 0, Qt::AlignTop);
        boxes->addWidget(told_, 1, 1, Qt::AlignTop);
    }
    if (said.cause.empty()) {
        cause_ = new TextField(tr("Cause"), {}, this);
        boxes->addWidget(cause_, 2, 0, 1, 2, Qt::AlignTop);
    }
    all->addLayout(boxes);
    problem_ = make_label({}, Step::body, Weight::semibold, this);
    problem_->setWordWrap(true);
    problem_->hide();
    all->addWidget(problem_);
    if (row_.end && said.closed_by.empty())
        tell(tr("It is closed by who writes this down: %1.")
                 .arg(session_.person().isEmpty() ? tr("nobody is named yet") : session_.person()),
             Weight::regular);
    auto* write = make_button(ButtonKind::primary, tr("Write the answer down"), QStringLiteral("sign"), this);
    write->setEnabled(session_.writable());
    if (!session_.writable()) write->setToolTip(session_.why_not_writable());
    connect(write, &QPushButton::clicked, this, &TriggerSheet::answer);
    all->addWidget(write, 0, Qt::AlignLeft);
}

void TriggerSheet::answer() {
    const auto blank = [](const TextField* field) { return field == nullptr || field->text().isEmpty(); };
    if (done_ != nullptr) done_->show_problem(blank(done_) ? tr("What was done must be said.") : QString());
    const bool half_told = told_ != nullptr && blank(whom_) != !told_->value().has_value();
    if (told_ != nullptr) told_->show_problem(half_told ? tr("Whom and when go together.") : QString());
    if ((done_ != nullptr && blank(done_)) || half_told) return;
    const Zone zone = session_.zone();
    const auto text = [](const TextField* field) { return field->text().toStdString(); };
    const Kind& kind = definition<Event>().kind();
    const bool first = row_.answer.isEmpty();
    std::vector<FieldInput> inputs;
    if (first)
        inputs = {{"kind", "trigger"},
                  {"condition", row_.condition.toStdString()},
                  {"place", row_.site.toStdString()},
                  {"from", instant_text(row_.over_since, zone)},
                  {"peak", number_text(row_.peak)},
                  {"what", tr("trigger of tier %1 passed").arg(row_.tier).toStdString()}};
    if (!blank(done_)) inputs.push_back({"action", text(done_)});
    if (!blank(cause_)) inputs.push_back({"cause", text(cause_)});
    if (!blank(whom_)) inputs.push_back({"told", text(whom_) + " " + instant_text(*told_->value(), zone)});
    if (row_.end && !row_.said.to) inputs.push_back({"to", instant_text(*row_.end, zone)});
    if (row_.end && row_.said.closed_by.empty() && !session_.person().isEmpty())
        inputs.push_back({"closed_by", session_.person().toStdString()});
    const Refusals refusals =
        session_.log(tr("answer to %1 at %2").arg(row_.condition, row_.site), kind,
                     first ? next_label(session_.book(), kind, "E-") : row_.said.event, inputs);
    problem_->setText(refusals_shown(refusals));
    problem_->setVisible(!refusals.empty());
    if (refusals.empty()) emit written();
}

}  // namespace spoilbook::form
