// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/figures_source.h"

#include "model/book/journal.h"
#include "model/book/season.h"

namespace spoilbook::form {
namespace {

struct Outcome {
    FiguresMade figures;
    QString why;
};

std::shared_ptr<Figures> worked_out(Season season, Instant as_at, const std::string& book) {
    auto figures = std::make_shared<Figures>();
    figures->book = book;
    figures->season = std::move(season);
    figures->as_at = as_at;
    figures->ledger = std::make_unique<Ledger>(figures->season);
    const Ledger& ledger = *figures->ledger;
    figures->limits = limits_at(ledger, as_at, &figures->unread);
    figures->burn = burndown(ledger, as_at);
    auto tracks = tracks_of(*figures);
    figures->places = release_places(ledger, as_at, &tracks);
    return figures;
}

Outcome outcome(const std::string& book, Instant as_at) {
    try {
        return {make_figures(book, as_at), {}};
    } catch (const std::exception& error) {
        return {nullptr, QString::fromUtf8(error.what())};
    }
}

}  // namespace

TripTracks tracks_of(const Figures& figures) {
    const auto opened = std::make_shared<Checked<Book>>(Book::open_to_read(figures.book));
    return {figures.season, [opened](const std::string& digest) {
                return *opened ? (*opened)->material(digest) : std::nullopt;
            }};
}

FiguresMade make_figures(Season season, Instant as_at) {
    return worked_out(std::move(season), as_at, {});
}

FiguresMade make_figures(const std::string& path, Instant as_at) {
    // A second reader of its own: the session's is the screen's, and one book is one thread's.
    const auto book = Book::open_to_read(path);
    if (!book) throw std::runtime_error(one_line(book.refusals().front()));
    auto figures = worked_out(read_season(*book), as_at, path);
    figures->journal_head = journal_state(*book).head;
    figures->import_stamps_ms = import_stamps_ms(*book);
    return figures;
}

FiguresSource::FiguresSource(BookSession& session, QObject* parent) : QObject(parent), session_(session) {
    pool_.setMaxThreadCount(1);
    connect(&session, &Session::changed, this, [this] {
        ++changes_;
        emit stale();
    });
    connect(&session, &Session::minute_passed, this, [this] {
        if (outlived()) emit stale();
    });
}

FiguresSource::~FiguresSource() {
    pool_.clear();
}

void FiguresSource::want() {
    // One at a time: while the book changes quickly, only the newest state is worked out after the running
    // one.
    if (at_work_ || (made_for_ == changes_ && !outlived())) return;
    start();
}

bool FiguresSource::outlived() const {
    return newest_ && !session_.as_at() && session_.now() - newest_->as_at >= ms_per_minute;
}

void FiguresSource::start() {
    at_work_ = true;
    begun_for_ = changes_;
    emit began();
    const std::string path = session_.book().path();
    const Instant as_at = session_.figures_at();
    off_screen<Outcome>(
        pool_, this, [path, as_at] { return outcome(path, as_at); },
        [this](Outcome result) {
            if (begun_for_ != changes_) return start();
            at_work_ = false;
            made_for_ = begun_for_;
            if (!result.figures) {
                emit failed(tr("The figures could not be worked out: %1").arg(result.why));
                return;
            }
            newest_ = std::move(result.figures);
            emit made();
        });
}

}  // namespace spoilbook::form
