// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/works/limit_effects.h"
#include "forms/works/reconcile_rows.h"

class QLabel;
class QPushButton;

namespace spoilbook::form {

class BookSession;
class TableView;
class TextField;
class TimeField;

inline constexpr int accept_width = 1000;

/// A proposed bulking factor before it is taken: from when, by whom and why, and what it does to every limit.
/// The press writes the dated factor; nothing is written before. The authority's acceptance is entered later.
class AcceptSheet : public QWidget {
    Q_OBJECT

 public:
    AcceptSheet(BookSession& session, ProposalRow proposal, QWidget* parent = nullptr);

    /// Asks for the effect of the factor in force from here; the answer comes by show_effects.
    [[nodiscard]] FactorToBe factor_to_be() const;
    void show_effects(std::vector<EffectRow> effects);

 signals:
    /// The day from which it would count was set or changed.
    void effects_asked();
    void written();

 private:
    void build_fields();
    void accept();
    [[nodiscard]] Instant shown_from() const;

    BookSession& session_;
    ProposalRow proposal_;
    TimeField* from_;
    TextField* by_;
    TextField* why_;
    QLabel* effect_of_;
    TableView* table_;
    RowTable<EffectRow>* effects_;
    QPushButton* accept_;
    QLabel* problem_;
};

}  // namespace spoilbook::form
