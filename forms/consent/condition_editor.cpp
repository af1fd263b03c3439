// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/condition_editor.h"

#include <QHBoxLayout>
#include <QPlainTextEdit>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "forms/consent/sentence_form.h"
#include "forms/consent/trial_words.h"
#include "forms/consent/unfilled_blank.h"
#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/scrolling.h"
#include "forms/shared/table_view.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "forms/works/say.h"
#include "model/consent/sentence.h"
#include "model/folder/condition_reader.h"
#include "model/logging/write_condition.h"
#include "model/record/field_text.h"
#include "model/unit/calendar.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

std::vector<Choice> kind_choices() {
    const auto one = [](const char* key, const QString& text) {
        return Choice{QString::fromLatin1(key), text};
    };
    return {one("quantity", ConditionEditor::tr("quantity: so much in a time")),
            one("place", ConditionEditor::tr("place: inside or outside something")),
            one("time", ConditionEditor::tr("time: when it is forbidden or allowed")),
            one("series", ConditionEditor::tr("series: readings against a level")),
            one("surface", ConditionEditor::tr("surface: the bed against a level")),
            one("duty", ConditionEditor::tr("duty: something is due")),
            one("watch", ConditionEditor::tr("watch: looking out before a release")),
            one("record", ConditionEditor::tr("record: what must be written down")),
            one("text", ConditionEditor::tr("text: anything else"))};
}

std::vector<Piece> name_pieces(const Draft&) {
    const auto blank = [](const char* at, const QString& name, int chars) {
        return Piece{{}, Blank{at, name, BlankHolds::text, {}, chars}};
    };
    return {{ConditionEditor::tr("Condition"), std::nullopt},
            blank("/condition", ConditionEditor::tr("number as printed"), 6),
            {ConditionEditor::tr("in force from"), std::nullopt},
            blank("/from", ConditionEditor::tr("its first day, 2026-07-01"), 18),
            {ConditionEditor::tr("until"), std::nullopt},
            blank("/to", ConditionEditor::tr("blank: for good"), 18)};
}

/// As far as it reads: what does not is told at its blank.
std::optional<Instant> moment_in(const Draft& draft, const char* member, const Zone& zone) {
    const auto found = draft.find(member);
    if (found == draft.end() || !found->is_string()) return std::nullopt;
    const auto value =
        parse_field(definition<Condition>().kind().field(member), found->get<std::string>(), zone);
    const auto* at = value ? std::get_if<std::int64_t>(&*value) : nullptr;
    return at ? std::optional(Instant{*at}) : std::nullopt;
}

QLabel* head(const QString& words, QWidget* parent) {
    return make_label(words, Step::body, Weight::semibold, parent);
}

QLabel* wrapped(QLabel* label) {
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

}  // namespace

ConditionEditor::ConditionEditor(BookSession& session, const Condition* before, QWidget* parent)
    : QWidget(parent), session_(session), is_version_(before != nullptr) {
    draft_ = Draft::object();
    if (before) {
        draft_ = Draft::parse(condition_as_json(*before, session.zone()).dump());
        // Its next version begins when the person says so.
        draft_.erase("from");
        draft_.erase("to");
    }
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(0, 0, 0, 0);
    auto* page = new QWidget(this);
    auto* all = new QVBoxLayout(page);
    all->setContentsMargins(0, 0, grid, 0);
    all->setSpacing(grid + half_grid);
    build_head(all);
    build_blanks(all);
    build_trial(all);
    all->addStretch();
    // As high as the sheet leaves it, or the sheet would scroll as well and take the press below out of
    // sight.
    blanks_ = scrolling(page, this);
    blanks_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored);
    blanks_->setMinimumHeight(24 * grid);
    outer->addWidget(blanks_, 1);
    build_foot(outer);
    if (before) {
        const Consent* consent = session.season().consents.find(before->consent);
        if (consent) consent_->set_chosen(QString::fromStdString(consent->consent));
        kind_->set_chosen(QString::fromStdString(before->kind));
    }
    order_tabs();
    show_words();
}

/// Boxes that are made anew stand behind all others until they are told where.
void ConditionEditor::order_tabs() {
    QWidget* before = is_version_ ? static_cast<QWidget*>(why_) : kind_;
    for (const SentenceForm* form : forms_)
        before = form->tab_after(before);
    setTabOrder(before, response_);
}

void ConditionEditor::build_head(QVBoxLayout* all) {
    auto* row = new QHBoxLayout;
    row->setSpacing(2 * grid);
    consent_ = new ChoiceField(tr("Consent"), this);
    std::vector<Choice> consents;
    for (const Consent& consent : session_.season().consents.rows())
        consents.push_back(
            {QString::fromStdString(consent.consent), QString::fromStdString(consent.consent)});
    consent_->set_choices(consents);
    if (consents.size() == 1) consent_->set_chosen(consents.front().key);
    kind_ = new ChoiceField(tr("Kind of condition"), this);
    kind_->set_choices(kind_choices());
    why_ = new TextField(tr("Why it changes"), {}, this);
    why_->setVisible(is_version_);
    for (FieldBox* box : std::initializer_list<FieldBox*>{consent_, kind_, why_})
        box->setFocusPolicy(Qt::StrongFocus);
    row->addWidget(consent_, 1);
    row->addWidget(kind_, 2);
    row->addWidget(why_, 3);
    all->addLayout(row);
    connect(kind_, &ChoiceField::committed, this, &ConditionEditor::choose_kind);
    forms_.push_back(new SentenceForm(draft_, name_pieces, this));
    all->addWidget(forms_.back());
    if (!is_version_) return;
    all->addWidget(wrapped(make_quiet(
        tr("The version in force is not written over: it ends where this one begins."), Step::small, this)));
}

void ConditionEditor::build_blanks(QVBoxLayout* all) {
    sentence_ = wrapped(make_label({}, Step::strong, Weight::regular, this));
    sentence_->setAccessibleName(tr("It reads"));
    notes_ = wrapped(make_quiet({}, Step::body, this));
    for (SentenceForm::Pieces pieces : {pieces_of, scope_pieces, word_pieces}) {
        forms_.push_back(new SentenceForm(draft_, pieces, this));
        all->addWidget(forms_.back());
    }
    response_ = make_button(ButtonKind::quiet, tr("Add a response"), QStringLiteral("add"), this);
    all->addWidget(response_, 0, Qt::AlignLeft);
    connect(response_, &QPushButton::clicked, this, [this] {
        draft_["responses"].push_back(Draft::object({{"action", nullptr}}));
        changed(true);
    });
    for (SentenceForm* form : forms_)
        connect(form, &SentenceForm::edited, this, &ConditionEditor::changed);
}

void ConditionEditor::build_trial(QVBoxLayout* all) {
    const auto context = [this] { return TimeContext{session_.zone(), session_.now(), {}}; };
    all->addWidget(head(tr("Try it against what happened"), this));
    auto* row = new QHBoxLayout;
    row->setSpacing(2 * grid);
    from_ = new TimeField(tr("Tried from"), context, this);
    to_ = new TimeField(tr("Tried until"), context, this);
    to_->set_value(session_.figures_at());
    from_->set_value(shift_months(session_.zone(), session_.figures_at(), -12));
    auto* button = make_button(ButtonKind::plain, tr("Try it"), QStringLiteral("check"), this);
    connect(button, &QPushButton::clicked, this, &ConditionEditor::try_it);
    row->addWidget(from_, 1);
    row->addWidget(to_, 1);
    row->addWidget(button, 1);
    all->addLayout(row);
    outcome_ = wrapped(make_label({}, Step::strong, Weight::regular, this));
    outcome_->hide();
    all->addWidget(outcome_);
    passes_ = new TableView(tr("when it would have been passed"), this);
    rows_ = new RowTable<TrialPass>(trial_columns(session_.zone(), QLocale()), passes_);
    passes_->set_model(rows_);
    passes_->set_empty_text(tr("It would not have been passed."));
    passes_->setMinimumHeight(22 * grid);
    passes_->hide();
    all->addWidget(passes_);
    connect(passes_, &TableView::opened, this, [this](int index) {
        const auto& load = rows_->row(index).load;
        if (!load.empty()) emit load_asked(QString::fromStdString(load));
    });
    auto* as_data =
        make_button(ButtonKind::quiet, tr("Show what will be kept"), QStringLiteral("table"), this);
    as_data->setCheckable(true);
    all->addWidget(as_data, 0, Qt::AlignLeft);
    data_ = new QPlainTextEdit(this);
    data_->setReadOnly(true);
    data_->setAccessibleName(tr("The condition as data (JSON)"));
    data_->setMinimumHeight(22 * grid);
    data_->hide();
    all->addWidget(data_);
    connect(as_data, &QPushButton::toggled, data_, &QWidget::setVisible);
}

void ConditionEditor::build_foot(QVBoxLayout* all) {
    all->addWidget(head(tr("It reads"), this));
    all->addWidget(sentence_);
    all->addWidget(notes_);
    problem_ = wrapped(make_label({}, Step::body, Weight::semibold, this));
    problem_->hide();
    all->addWidget(problem_);
    auto* write =
        make_button(ButtonKind::primary, is_version_ ? tr("Write the new version down") : tr("Write it down"),
                    QStringLiteral("sign"), this);
    write->setEnabled(session_.writable());
    all->addWidget(write, 0, Qt::AlignLeft);
    connect(write, &QPushButton::clicked, this, &ConditionEditor::write_it);
}

void ConditionEditor::choose_kind(const QString& kind) {
    change_kind(draft_, kind.toStdString());
    changed(true);
}

// A box that is left may be one that goes: it is first let out of its own signal.
void ConditionEditor::changed(bool choice) {
    outcome_->hide();
    passes_->hide();
    if (!choice) {
        checked(false);
        return show_words();
    }
    QTimer::singleShot(0, this, [this] {
        for (SentenceForm* form : forms_)
            form->rebuild();
        order_tabs();
        checked(false);
        show_words();
    });
}

void ConditionEditor::show_words() {
    Condition shown = as_condition(draft_);
    shown.from = moment_in(draft_, "from", session_.zone());
    shown.to = moment_in(draft_, "to", session_.zone());
    sentence_->setText(shown.kind.empty() ? tr("Pick the kind of condition: its sentence opens here.")
                                          : book_text(condition_sentence(shown)));
    QStringList notes;
    if (!shown.kind.empty() && !shown.from) notes << tr("In force from …");
    for (const std::string& note : condition_notes(shown, session_.zone()))
        notes << QString::fromStdString(note);
    notes_->setText(notes.join(u' '));
    notes_->setVisible(!notes.isEmpty());
    data_->setPlainText(QString::fromStdString(without_blanks(draft_).dump(2)));
}

std::optional<Condition> ConditionEditor::checked(bool missing_too) {
    auto condition = condition_from(without_blanks(draft_), "condition", session_.zone());
    Refusals refusals = condition.refusals();
    if (condition) {
        for (Refusal& refusal : unknown_names(session_.book(), *condition, "condition"))
            refusals.push_back(std::move(refusal));
    }
    // A text keeps its own words; in all other sentences "…" stands for what is not said yet.
    std::vector<std::string> unfilled;
    if (condition && missing_too && condition->kind != "text")
        unfilled = unfilled_blanks(draft_, pieces_of(draft_));
    show_refusals(refusals, missing_too, unfilled);
    if (!refusals.empty() || !unfilled.empty()) return std::nullopt;
    const QString consent = consent_->chosen().value_or(QString());
    for (const Consent& one : session_.season().consents.rows()) {
        if (QString::fromStdString(one.consent) == consent) condition->consent = one.id;
    }
    return std::move(*condition);
}

void ConditionEditor::show_refusals(const Refusals& refusals, bool missing_too,
                                    const std::vector<std::string>& unfilled) {
    std::map<std::string, QString> problems;
    for (const std::string& at : unfilled)
        problems.emplace(at, tr("This blank of the sentence is not filled yet: it reads “…”."));
    for (const Refusal& refusal : refusals) {
        const bool missing = refusal.code == "missing-member" || refusal.code == "blank-id";
        if (missing && !missing_too) continue;
        QString words = QString::fromStdString(refusal.what);
        if (!refusal.mend.empty()) words += QStringLiteral("; ") + QString::fromStdString(refusal.mend);
        problems.emplace(pointer_of(refusal.where), words);
    }
    if (const auto why = problems.find("/why"); why != problems.end()) {
        why_->show_problem(why->second);
        problems.erase(why);
    }
    for (SentenceForm* form : forms_)
        form->show_problems(problems);
    QStringList rest;
    for (const auto& [at, words] : problems)
        rest << words;
    problem_->setText(rest.join(u'\n'));
    problem_->setVisible(!rest.isEmpty());
    if (missing_too) go_to_first_problem();
}

// After a press that could not be done the keyboard stands where it is to be mended.
void ConditionEditor::go_to_first_problem() {
    std::vector<FieldBox*> boxes{consent_, kind_, why_};
    for (const SentenceForm* form : forms_) {
        for (FieldBox* box : form->boxes())
            boxes.push_back(box);
    }
    const auto first = std::find_if(boxes.begin(), boxes.end(), [](const FieldBox* box) {
        return box->isVisibleTo(box->parentWidget()) && !box->problem().isEmpty();
    });
    if (first == boxes.end()) return;
    (*first)->setFocus();
    // What is said below the box has made it higher: it is brought in sight when that is laid out.
    QTimer::singleShot(0, *first, [this, box = *first] { blanks_->ensureWidgetVisible(box); });
}

Instant ConditionEditor::from() const {
    return from_->value().value_or(shift_months(session_.zone(), to(), -12));
}

Instant ConditionEditor::to() const {
    return to_->value().value_or(session_.figures_at());
}

void ConditionEditor::try_it() {
    const auto condition = checked(true);
    if (!condition) return;
    tried_ = *condition;
    outcome_->setText(tr("Trying it …"));
    outcome_->show();
    passes_->hide();
    emit trial_asked();
}

void ConditionEditor::show_trial(const Trial& trial) {
    outcome_->setText(trial_sentence(trial, session_.zone(), QLocale()));
    outcome_->show();
    rows_->set_rows(trial.passes);
    passes_->table()->resizeColumnsToContents();
    passes_->setVisible(!trial.passes.empty());
}

// A blank would be kept as "always": whoever means that says so, by the day on which the consent begins.
Refusal ConditionEditor::no_first_day(const Condition& condition) const {
    const Consent* consent = session_.season().consents.find(condition.consent);
    std::string begins = consent ? consent->granted : std::string();
    if (consent && consent->commences) begins = day_text(session_.zone().day_of(*consent->commences));
    return {"no-first-day", "condition from", tr("Say from when it is in force").toStdString(),
            begins.empty()
                ? std::string()
                : tr("its consent begins on %1").arg(QString::fromStdString(begins)).toStdString()};
}

void ConditionEditor::write_it() {
    why_->show_problem({});
    consent_->show_problem(consent_->chosen() ? QString() : tr("Which consent it is part of must be said."));
    kind_->show_problem(kind_->chosen() ? QString() : tr("Its kind must be picked first."));
    if (!kind_->chosen()) return go_to_first_problem();
    const auto condition = checked(true);
    if (!condition || !consent_->chosen()) return;
    if (!is_version_ && !condition->from) return show_refusals({no_first_day(*condition)}, true);
    const QString what = is_version_ ? tr("condition %1 changed") : tr("condition %1 written");
    const Refusals refusals =
        session_.write(what.arg(QString::fromStdString(condition->condition)), EntryKind::change,
                       why_->text(), [&](Book& book, const Act& by) -> Checked<Done> {
                           const auto id = write_condition(book, by, *condition);
                           if (!id) return id.refusals();
                           return Done{};
                       });
    show_refusals(refusals, true);
    if (refusals.empty()) emit written();
}

}  // namespace spoilbook::form
