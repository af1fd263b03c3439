// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "forms/shared/book_session.h"
#include "forms/shared/state_mark.h"
#include "model/consent/check_facts.h"
#include "model/consent/what_if.h"

class QLabel;

namespace spoilbook::form {

/// What the release check said, in words: made off the screen's thread, so it holds no pointer into a book.
struct ReleaseWords {
    State state = State::unknown;
    QString text;
    QString reasons;   ///< every condition that does not go clear, a line each
    QString to_do;     ///< what is to be done before the doors open, a line each
    QString due_cell;  ///< empty: none
    QString word{};    ///< of the state; empty: its usual one
};

/// Before the doors open it is asked what would stand against it; from then on, what stands against it.
enum class ReleaseStage { ahead, opened };

/// Whether anything in the consent stops the release of this load, in one sentence. It never says that she
/// may sail.
class ReleaseLine : public QWidget {
    Q_OBJECT

 public:
    ReleaseLine(BookSession& session, QWidget* parent);

    /// Asks about this release, where it is another question than the last one. Ahead, the cell that is due
    /// is judged where none is chosen. Opened, it is judged at its own time and place, and nothing shows
    /// where nothing stands against it.
    void ask(const PlannedRelease& planned, ReleaseStage stage = ReleaseStage::ahead);
    /// Nothing is about to be released.
    void quiet();

 signals:
    void due_cell(const QString& cell);

 private:
    void show_words(const ReleaseWords& words);

    BookSession& session_;
    StateMark* mark_;
    QLabel* text_;
    QString asked_;
    int asked_count_ = 0;
};

/// The answer itself, for any thread: `season` is that thread's own. `facts` as
/// model/answer/checked_release.h reads them out of the book.
ReleaseWords release_words(const Season& season, const PlannedRelease& asked, const CheckFacts& facts);
/// The same of a release whose doors are open, or were: what stands against it where it was made. Empty text:
/// nothing that is judged.
ReleaseWords opened_words(const Season& season, const PlannedRelease& planned, const CheckFacts& facts);

}  // namespace spoilbook::form
