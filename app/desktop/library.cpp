// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desktop/library.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "forms/shared/main_window.h"
#include "model/book/open.h"
#include "model/folder/import_folder.h"

namespace spoilbook {

using form::OpenedBook;
using form::refusals_shown;

BookLibrary::BookLibrary(std::string device, std::function<Instant()> clock, MakeDesks make_desks,
                         QString sample, QString own_sample)
    : device_(std::move(device)),
      clock_(std::move(clock)),
      make_desks_(std::move(make_desks)),
      sample_(std::move(sample)),
      own_sample_(std::move(own_sample)) {}

OpenedBook BookLibrary::opened(Book book, const QString& why_not) {
    auto session = std::make_unique<form::BookSession>(std::move(book), clock_, why_not);
    std::vector<form::Desk> desks = make_desks_(*session);
    return {std::move(session), std::move(desks), {}};
}

OpenedBook BookLibrary::open(const QString& path) {
    const std::string file = path.toStdString();
    try {
        const Act by{EntryKind::upgrade, clock_(), {}, {}};
        auto writer = Book::open_to_write(file, device_, by);
        if (writer) return opened(std::move(*writer), {});
        // Held by another, or a file that may only be read: it can be looked at all the same.
        auto reader = Book::open_to_read(file);
        if (reader) return opened(std::move(*reader), QString::fromStdString(writer.refusals().front().what));
        return {nullptr, {}, refusals_shown(reader.refusals())};
    } catch (const std::exception& error) {
        return {nullptr,
                {},
                form::MainWindow::tr("%1 cannot be read: %2").arg(path, QString::fromUtf8(error.what()))};
    }
}

bool BookLibrary::has_sample() const {
    return QFile::exists(sample_) || QFile::exists(own_sample_);
}

OpenedBook BookLibrary::open_sample() {
    if (QFile::exists(own_sample_)) return open(own_sample_);
    QDir().mkpath(QFileInfo(own_sample_).absolutePath());
    if (!QFile::copy(sample_, own_sample_)) {
        return {
            nullptr, {}, form::MainWindow::tr("The sample book could not be copied to %1.").arg(own_sample_)};
    }
    QFile::setPermissions(own_sample_, QFile::ReadOwner | QFile::WriteOwner);
    return open(own_sample_);
}

OpenedBook BookLibrary::create_from_folder(const QString& folder, const QString& path) {
    try {
        const auto made = make_book(path.toStdString(), device_, [&](Book& book) -> Checked<Done> {
            const Act by{EntryKind::import, clock_(), {}, {}};
            const auto outcome = import_folder(book, folder.toStdString(), by);
            if (!outcome) return outcome.refusals();
            return Done{};
        });
        if (!made) return {nullptr, {}, refusals_shown(made.refusals())};
    } catch (const std::exception& error) {
        return {
            nullptr, {}, form::MainWindow::tr("No book was made: %1").arg(QString::fromUtf8(error.what()))};
    }
    return open(path);
}

}  // namespace spoilbook
