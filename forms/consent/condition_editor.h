// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/consent/condition_blank.h"
#include "forms/shared/table_model.h"
#include "model/answer/try_condition.h"
#include "model/record/season.h"

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace spoilbook::form {

class BookSession;
class ChoiceField;
class SentenceForm;
class TableView;
class TextField;
class TimeField;

inline constexpr int editor_width = 1080;

/// A condition while it is written: a kind is picked, the blanks of its sentence are filled, it is tried
/// against what happened, and then written down. One that the book has is never written over: what is
/// written is its next version, with a reason. Nothing is in the book before the press.
class ConditionEditor : public QWidget {
    Q_OBJECT

 public:
    /// `before`: the version that is changed; null: a new condition.
    ConditionEditor(BookSession& session, const Condition* before, QWidget* parent = nullptr);

    /// Asked of the leaf, which has the figures: the condition as it stands, and over which time.
    [[nodiscard]] const Condition& tried() const { return tried_; }
    [[nodiscard]] Instant from() const;
    [[nodiscard]] Instant to() const;
    void show_trial(const Trial& trial);

 signals:
    void trial_asked();
    void load_asked(const QString& load);
    void written();

 private:
    void build_head(QVBoxLayout* all);
    void build_blanks(QVBoxLayout* all);
    void build_trial(QVBoxLayout* all);
    void build_foot(QVBoxLayout* all);
    void choose_kind(const QString& kind);
    void order_tabs();
    void changed(bool choice);
    void show_words();
    /// The condition as it stands, where it may be written; else what is wrong is beside its blanks.
    std::optional<Condition> checked(bool missing_too);
    void show_refusals(const Refusals& refusals, bool missing_too,
                       const std::vector<std::string>& unfilled = {});
    void go_to_first_problem();
    void try_it();
    [[nodiscard]] Refusal no_first_day(const Condition& condition) const;
    void write_it();

    BookSession& session_;
    bool is_version_;
    Draft draft_;
    Condition tried_;
    ChoiceField* consent_;
    ChoiceField* kind_;
    TextField* why_;
    QPushButton* response_;
    std::vector<SentenceForm*> forms_;
    QScrollArea* blanks_;
    QLabel* sentence_;
    QLabel* notes_;
    TimeField* from_;
    TimeField* to_;
    QLabel* outcome_;
    TableView* passes_;
    RowTable<TrialPass>* rows_;
    QPlainTextEdit* data_;
    QLabel* problem_;
};

}  // namespace spoilbook::form
