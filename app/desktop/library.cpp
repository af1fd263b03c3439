// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desktop/library.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "forms/shared/main_window.h"
#include "model/book/backup.h"
#include "model/book/open.h"
#include "model/book/season.h"
#include "model/folder/import_folder.h"

namespace spoilbook {

using form::OpenedBook;
using form::Ready;
using form::refusals_shown;

namespace {

Ready not_opened(const QString& why) {
    return [why]() -> OpenedBook { return {nullptr, {}, why}; };
}

}  // namespace

BookLibrary::BookLibrary(std::string device, std::function<Instant()> clock, MakeDesks make_desks,
                         QString sample, QString own_sample)
    : device_(std::move(device)),
      clock_(std::move(clock)),
      make_desks_(std::move(make_desks)),
      sample_(std::move(sample)),
      own_sample_(std::move(own_sample)) {}

Ready BookLibrary::ready(Book book, const QString& why_not) {
    // A function that can be copied holds what cannot: handed on once.
    struct Read {
        Book book;
        std::unique_ptr<Season> season;
    };
    auto season = std::make_unique<Season>(read_season(book));
    auto read = std::make_shared<Read>(Read{std::move(book), std::move(season)});
    return [this, read, why_not]() -> OpenedBook {
        auto session = std::make_unique<form::BookSession>(std::move(read->book), clock_, why_not,
                                                           std::move(read->season));
        std::vector<form::Desk> desks = make_desks_(*session);
        return {std::move(session), std::move(desks), {}};
    };
}

Ready BookLibrary::open(const QString& path, const GoingOn&) {
    const std::string file = path.toStdString();
    try {
        const Act by{EntryKind::upgrade, clock_(), {}, {}};
        auto writer = Book::open_to_write(file, device_, by);
        if (writer) return ready(std::move(*writer), {});
        // Held by another, or a file that may only be read: it can be looked at all the same.
        auto reader = Book::open_to_read(file);
        if (reader) return ready(std::move(*reader), QString::fromStdString(writer.refusals().front().what));
        return not_opened(refusals_shown(reader.refusals()));
    } catch (const std::exception& error) {
        return not_opened(
            form::MainWindow::tr("%1 cannot be read: %2").arg(path, QString::fromUtf8(error.what())));
    }
}

bool BookLibrary::has_sample() const {
    return QFile::exists(sample_) || QFile::exists(own_sample_);
}

Ready BookLibrary::open_sample(const GoingOn& going_on) {
    if (QFile::exists(own_sample_)) return open(own_sample_, going_on);
    QDir().mkpath(QFileInfo(own_sample_).absolutePath());
    // As a plain file: it may lie where nobody may write, and nobody has it open.
    if (!QFile::copy(sample_, own_sample_)) {
        return not_opened(
            form::MainWindow::tr("The sample book could not be copied to %1.").arg(own_sample_));
    }
    QFile::setPermissions(own_sample_, QFile::ReadOwner | QFile::WriteOwner);
    return open(own_sample_, going_on);
}

Ready BookLibrary::create_from_folder(const QString& folder, const QString& path, const GoingOn& going_on) {
    const auto watched = [&going_on] { return !going_on || going_on(-1); };
    const Refusals stopped{{"stopped", path.toStdString(), "the making was stopped", "no book was made"}};
    try {
        const auto made = make_book(path.toStdString(), device_, [&](Book& book) -> Checked<Done> {
            const Act by{EntryKind::import, clock_(), {}, {}};
            auto contents = read_folder(folder.toStdString(), basis_of(book));
            if (!watched()) return stopped;
            const auto plan = plan_import(std::move(contents), &book);
            if (!plan) return plan.refusals();
            if (!watched()) return stopped;
            const auto outcome = land(book, *plan, by);
            if (!outcome) return outcome.refusals();
            if (!watched()) return stopped;
            return Done{};
        });
        if (!made) return not_opened(refusals_shown(made.refusals()));
    } catch (const std::exception& error) {
        return not_opened(form::MainWindow::tr("No book was made: %1").arg(QString::fromUtf8(error.what())));
    }
    return open(path, going_on);
}

Ready BookLibrary::take_back(const QString& backup, const QString& path, const GoingOn& going_on) {
    try {
        const auto book = Book::open_to_read(backup.toStdString());
        if (!book) return not_opened(refusals_shown(book.refusals()));
        const auto copied = back_up(*book, path.toStdString(), going_on);
        if (!copied) return not_opened(refusals_shown(copied.refusals()));
    } catch (const std::exception& error) {
        return not_opened(
            form::MainWindow::tr("%1 cannot be read: %2").arg(backup, QString::fromUtf8(error.what())));
    }
    return open(path, going_on);
}

}  // namespace spoilbook
