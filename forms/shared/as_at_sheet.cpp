// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/as_at_sheet.h"

#include <QVBoxLayout>

#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/time_field.h"

namespace spoilbook::form {

AsAtSheet::AsAtSheet(Session& session, QWidget* parent) : QWidget(parent) {
    auto* all = new QVBoxLayout(this);
    QLabel* what =
        make_quiet(tr("Figures count what had happened by this instant, of all that the book knows now. "
                      "Nothing in the book changes."),
                   Step::body, this);
    what->setWordWrap(true);
    all->addWidget(what);
    auto* time = new TimeField(
        tr("As at"),
        [&session] {
            return TimeContext{session.zone(), session.now(), {}};
        },
        this);
    time->set_value(session.as_at());
    all->addWidget(time);
    QLabel* how = make_quiet(tr("Written like 2026-05-30 18:00, 30/5 1800 or 1800."), Step::small, this);
    how->setIndent(3);
    all->addWidget(how);
    all->addStretch();
    QPushButton* now = make_button(ButtonKind::plain, tr("Back to now"), QStringLiteral("clock"), this);
    QPushButton* take =
        make_button(ButtonKind::primary, tr("Show figures as at this time"), QStringLiteral("check"), this);
    all->addWidget(now);
    all->addWidget(take);
    connect(now, &QPushButton::clicked, this, [this, &session] {
        session.set_as_at(std::nullopt);
        emit done();
    });
    connect(take, &QPushButton::clicked, this, [this, &session, time] {
        if (!time->problem().isEmpty()) return;
        session.set_as_at(time->value());
        emit done();
    });
}

}  // namespace spoilbook::form
