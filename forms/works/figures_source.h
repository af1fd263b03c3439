// SPDX-License-Identifier: GPL-3.0-or-later
// Where we stand, worked out off the screen's thread once for all leaves of all desks.
#pragma once

#include <QObject>
#include <QThreadPool>
#include <memory>
#include <set>

#include "forms/shared/book_session.h"
#include "forms/shared/off_screen.h"
#include "model/answer/release_places.h"
#include "model/consent/limit.h"
#include "model/progress/burndown.h"

namespace spoilbook::form {

/// A season with its ledger, and what all leaves ask of it. Fixed once made; may be read by any thread.
struct Figures {
    std::string book;  ///< its file; empty for a season that came without
    Season season;
    std::unique_ptr<Ledger> ledger;
    Instant as_at;
    std::string journal_head;
    std::set<std::int64_t> import_stamps_ms;  ///< as a return asks for them
    std::vector<LimitState> limits;
    Refusals unread;  ///< conditions that do not read
    BurnDown burn;
    std::vector<ReleasePlace> places;
};

using FiguresMade = std::shared_ptr<const Figures>;

/// Reads the season of a book's file and works it out. Throws BookError where it cannot be read.
FiguresMade make_figures(const std::string& book, Instant as_at);
/// The same from a season that is there.
FiguresMade make_figures(Season season, Instant as_at);

/// The trips' tracks, read from the figures' own book. The figures must outlive it.
TripTracks tracks_of(const Figures& figures);

class FiguresSource : public QObject {
    Q_OBJECT

 public:
    /// Listens to the session for as long as it lives; works out nothing before it is wanted.
    explicit FiguresSource(BookSession& session, QObject* parent = nullptr);
    ~FiguresSource() override;

    /// The newest that is made; null before the first.
    [[nodiscard]] const FiguresMade& newest() const { return newest_; }
    /// Figures for the book as it is now: at once where they are made, otherwise `made` follows. Figures for
    /// now that are over a minute old count as not made.
    void want();
    [[nodiscard]] bool at_work() const { return at_work_; }
    /// Whether the newest know all that was written, and are at most older than the clock.
    [[nodiscard]] bool know_the_book() const { return newest_ && made_for_ == changes_; }
    [[nodiscard]] BookSession& session() const { return session_; }
    /// One thread: what pages ask of the figures is answered in turn.
    [[nodiscard]] QThreadPool& pool() { return pool_; }

 signals:
    void stale();  ///< the book changed or time went on: whoever is seen should want again
    void began();
    void made();
    void failed(const QString& why);

 private:
    void start();
    [[nodiscard]] bool outlived() const;

    BookSession& session_;
    QThreadPool pool_;
    FiguresMade newest_;
    int changes_ = 1;   ///< how often the book changed
    int made_for_ = 0;  ///< the change that `newest_` knows
    int begun_for_ = 0;
    bool at_work_ = false;
};

}  // namespace spoilbook::form
