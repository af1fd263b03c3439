// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>

#include "forms/consent/condition_blank.h"

namespace spoilbook::form {

class FieldBox;

/// A sentence with boxes in it, one for each blank; what is wrong with one stands below it. Writes into the
/// draft when a box is left, and says so; the draft is the owner's and must outlive it.
class SentenceForm : public QWidget {
    Q_OBJECT

 public:
    using Pieces = std::vector<Piece> (*)(const Draft&);

    SentenceForm(Draft& draft, Pieces pieces, QWidget* parent);

    /// Makes the boxes anew, as the draft now asks for. The keyboard stays at its blank.
    void rebuild();
    /// Its boxes in the order of reading.
    [[nodiscard]] QList<FieldBox*> boxes() const;
    /// Puts the boxes behind `before` in the order of the Tab key; the last of them, or `before`.
    QWidget* tab_after(QWidget* before) const;
    /// Of problems by JSON pointer those that are of a blank here are shown there, and taken out.
    void show_problems(std::map<std::string, QString>& problems);

 signals:
    /// The draft was changed; `choice`: which blanks there are may have changed with it.
    void edited(bool choice);

 private:
    FieldBox* make_box(const Blank& blank);
    static QString in_words(const std::pair<const std::string, QString>& problem, const FieldBox& box);
    void show_problem(FieldBox* box, const QString& problem);
    void put(const Blank& blank, const QString& typed);

    Draft& draft_;
    Pieces pieces_;
    QWidget* line_ = nullptr;
    std::map<std::string, FieldBox*> boxes_;  ///< by pointer; of a `which` with its own '?'
    std::map<FieldBox*, int> widths_;
};

}  // namespace spoilbook::form
