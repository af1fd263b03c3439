// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "forms/shared/book_session.h"
#include "forms/shared/desk.h"

namespace spoilbook {

/// Opens books for the window: for writing where that may be, else for reading with the reason shown.
class BookLibrary : public form::Library {
 public:
    using MakeDesks = std::function<std::vector<form::Desk>(form::BookSession&)>;
    /// `device` names this machine in a journal. `sample` is the sample book as it was shipped, which may not
    /// be there; `own_sample` is where this person's copy of it lies.
    BookLibrary(std::string device, std::function<Instant()> clock, MakeDesks make_desks, QString sample,
                QString own_sample);

    form::Ready open(const QString& path, const GoingOn& going_on) override;
    form::Ready create_from_folder(const QString& folder, const QString& path,
                                   const GoingOn& going_on) override;
    form::Ready take_back(const QString& backup, const QString& path, const GoingOn& going_on) override;
    [[nodiscard]] bool has_sample() const override;
    form::Ready open_sample(const GoingOn& going_on) override;

 private:
    /// Reads all of the book's season here; the rest is quick.
    form::Ready ready(Book book, const QString& why_not);

    std::string device_;
    std::function<Instant()> clock_;
    MakeDesks make_desks_;
    QString sample_;
    QString own_sample_;
};

}  // namespace spoilbook
