// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/done_sheet.h"

#include <QDesktopServices>
#include <QDir>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QStandardPaths>
#include <QUrl>
#include <QVBoxLayout>

#include "forms/shared/book_session.h"
#include "forms/shared/button.h"
#include "forms/shared/label.h"
#include "forms/shared/save_file.h"
#include "forms/shared/text_field.h"
#include "forms/shared/time_field.h"
#include "model/folder/regular_file.h"
#include "model/logging/mark_done.h"
#include "model/record/evidence_text.h"

namespace spoilbook::form {
namespace {

Checked<EvidenceBytes> read_evidence(const QString& path) {
    auto bytes = read_regular_file(path.toStdString(), path.toStdString(), largest_file_bytes);
    if (!bytes) return bytes.refusals();
    return EvidenceBytes{QFileInfo(path).fileName().toStdString(), std::move(*bytes)};
}

}  // namespace

DoneSheet::DoneSheet(BookSession& session, DutyRow duty, QWidget* parent)
    : QWidget(parent),
      session_(session),
      duty_(std::move(duty)),
      files_(new QWidget(this)),
      problem_(make_label({}, Step::body, Weight::semibold, this)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    for (const QString& line : {duty_.text, duty_.how}) {
        if (line.isEmpty()) continue;
        auto* label = make_label(line, Step::body, Weight::regular, this);
        label->setWordWrap(true);
        all->addWidget(label);
    }
    auto* covers = make_quiet(duty_.covers.isEmpty() ? tr("Covers the one time that the condition names.")
                                                     : tr("Covers %1.").arg(duty_.covers),
                              Step::body, this);
    covers->setWordWrap(true);
    all->addWidget(covers);
    if (is_done()) {
        all->addWidget(make_label(tr("Done %1.").arg(duty_.done_text), Step::strong, Weight::semibold, this));
        const QString words = QString::fromStdString(evidence_words(duty_.evidence.toStdString()));
        auto* said = make_label(words.isEmpty() ? tr("No evidence is recorded.") : words, Step::body,
                                Weight::regular, this);
        said->setWordWrap(true);
        all->addWidget(said);
    } else {
        build_fields();
    }
    build_files();
    problem_->setWordWrap(true);
    problem_->hide();
    all->addWidget(problem_);
    all->addStretch();
    auto* note = make_quiet(tr("The consent's own text prevails."), Step::small, this);
    all->addWidget(note);
}

bool DoneSheet::is_done() const {
    return !duty_.done.is_nil();
}

void DoneSheet::build_fields() {
    auto* all = qobject_cast<QVBoxLayout*>(layout());
    at_ = new TimeField(
        tr("Done at"),
        [this] {
            return TimeContext{session_.zone(), session_.now(), {}};
        },
        this);
    at_->offer(session_.now(), tr("now"));
    by_ = new TextField(tr("Done by"), {}, this);
    if (!session_.person().isEmpty()) by_->offer(session_.person(), tr("who writes"));
    evidence_ = new TextField(tr("What shows it"), {}, this);
    evidence_->set_hint(tr("A letter, a reference, who acknowledged it"));
    remarks_ = new TextField(tr("Remarks"), {}, this);
    for (QWidget* field : std::initializer_list<QWidget*>{at_, by_, evidence_, remarks_})
        all->addWidget(field);
}

void DoneSheet::build_files() {
    auto* all = qobject_cast<QVBoxLayout*>(layout());
    auto* lines = new QVBoxLayout(files_);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(half_grid);
    all->addWidget(files_);
    list_files();
    auto* presses = new QHBoxLayout;
    if (!is_done()) {
        write_ = make_button(ButtonKind::primary, tr("Mark as done"), QStringLiteral("check"), this);
        write_->setEnabled(session_.writable());
        connect(write_, &QPushButton::clicked, this, &DoneSheet::write);
        presses->addWidget(write_);
    }
    auto* add = make_button(ButtonKind::plain, tr("Add a file …"), QStringLiteral("add"), this);
    add->setToolTip(tr("It is copied into the book with its SHA-256 digest"));
    add->setEnabled(session_.writable());
    connect(add, &QPushButton::clicked, this, [this] {
        choose_file(this, tr("A file that shows it"), {}, [this](const QString& path) { add_file(path); });
    });
    presses->addWidget(add);
    presses->addStretch();
    all->addLayout(presses);
}

void DoneSheet::list_files() {
    for (QWidget* line : files_->findChildren<QWidget*>(Qt::FindDirectChildrenOnly))
        line->deleteLater();
    for (const EvidenceFile& file : evidence_files(duty_.evidence.toStdString()))
        add_line(QString::fromStdString(file.name), QString::fromStdString(file.digest));
    for (const QString& path : paths_)
        add_line(tr("%1, kept with the press").arg(QFileInfo(path).fileName()), {});
}

// The digest is cut for the eye; the whole of it is in the tip, for sha256sum.
void DoneSheet::add_line(const QString& name, const QString& digest) {
    auto* line = new QWidget(files_);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    auto* label = make_label(name, Step::body, Weight::regular, line);
    label->setWordWrap(true);
    row->addWidget(label, 1);
    files_->layout()->addWidget(line);
    line->show();
    if (digest.isEmpty()) return;
    auto* mark = make_quiet(tr("SHA-256 %1 …").arg(digest.left(12)), Step::small, line);
    mark->setToolTip(digest);
    row->addWidget(mark);
    auto* open = make_button(ButtonKind::quiet, tr("Open"), {}, line);
    open->setAccessibleName(tr("Open %1").arg(name));
    connect(open, &QPushButton::clicked, this, [this, name, digest] { open_file(name, digest); });
    row->addWidget(open);
    auto* save = make_button(ButtonKind::quiet, tr("Save out …"), {}, line);
    save->setAccessibleName(tr("Save %1 out").arg(name));
    connect(save, &QPushButton::clicked, this, [this, name, digest] { save_out(name, digest); });
    row->addWidget(save);
}

void DoneSheet::add_file(const QString& path) {
    tell({});
    if (!is_done()) {
        if (!paths_.contains(path)) paths_ << path;
        return list_files();
    }
    const auto file = read_evidence(path);
    if (!file) return tell(refusals_shown(file.refusals()));
    const Refusals refusals = session_.write(
        tr("evidence for condition %1").arg(duty_.condition), EntryKind::change, {},
        [&](Book& book, const Act& act) -> Checked<Done> {
            const auto kept = add_evidence(book, act, duty_.done, *file);
            if (!kept) return kept.refusals();
            const auto row = book.row(definition<DutyDone>().kind(), duty_.done);
            duty_.evidence = QString::fromStdString(definition<DutyDone>().read(*row).evidence);
            return Done{};
        });
    if (!refusals.empty()) return tell(refusals_shown(refusals));
    list_files();
}

void DoneSheet::write() {
    at_->show_problem(at_->value() ? QString() : tr("When it was done must be said."));
    by_->show_problem(by_->text().isEmpty() ? tr("Who did it must be said.") : QString());
    if (!at_->value() || by_->text().isEmpty()) return;
    DutyMark mark;
    mark.consent = duty_.consent.toStdString();
    mark.condition = duty_.condition.toStdString();
    mark.covers_from = duty_.covers_from;
    mark.done_at = *at_->value();
    mark.by = by_->text().simplified().toStdString();
    mark.evidence = evidence_->text().simplified().toStdString();
    mark.remarks = remarks_->text().simplified().toStdString();
    for (const QString& path : paths_) {
        auto file = read_evidence(path);
        if (!file) return tell(refusals_shown(file.refusals()));
        mark.files.push_back(std::move(*file));
    }
    const Refusals refusals = session_.write(tr("condition %1 done").arg(duty_.condition), EntryKind::change,
                                             {}, [&](Book& book, const Act& act) -> Checked<Done> {
                                                 const auto done = mark_done(book, act, mark);
                                                 if (!done) return done.refusals();
                                                 return Done{};
                                             });
    if (!refusals.empty()) return tell(refusals_shown(refusals));
    emit written();
}

// A copy of its own, for reading: what is changed there does not come back into the book.
void DoneSheet::open_file(const QString& name, const QString& digest) {
    const QString cache = QStandardPaths::writableLocation(QStandardPaths::CacheLocation);
    const QDir folder(cache + u'/' + digest.left(12));
    const auto bytes = session_.book().material(digest.toStdString());
    if (!bytes) return tell(tr("The book does not hold this file."));
    if (!folder.mkpath(QStringLiteral("."))) return tell(tr("%1 cannot be made.").arg(folder.path()));
    const QString path = folder.filePath(name);
    const QString why = write_file(path, QByteArray::fromStdString(*bytes));
    if (!why.isEmpty()) return tell(why);
    if (!QDesktopServices::openUrl(QUrl::fromLocalFile(path)))
        tell(tr("No program opens it here. Save it out instead."));
}

void DoneSheet::save_out(const QString& name, const QString& digest) {
    save_file(this, tr("Save a copy"), name, {}, [this, digest](const QString& path) {
        const auto bytes = session_.book().material(digest.toStdString());
        const QString why = bytes ? write_file(path, QByteArray::fromStdString(*bytes))
                                  : tr("The book does not hold this file.");
        if (!why.isEmpty()) return tell(why);
        emit exported(path);
    });
}

void DoneSheet::tell(const QString& why) {
    problem_->setText(why);
    problem_->setVisible(!why.isEmpty());
}

}  // namespace spoilbook::form
