// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/readings_sheet.h"

#include <QFileInfo>
#include <QVBoxLayout>

#include "forms/shared/book_session.h"
#include "forms/shared/busy_overlay.h"
#include "forms/shared/button.h"
#include "forms/shared/choice_field.h"
#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"
#include "forms/shared/off_screen.h"
#include "forms/shared/text_field.h"
#include "forms/shared/type_scale.h"
#include "forms/works/say.h"
#include "model/folder/regular_file.h"
#include "model/record/watched_water.h"

namespace spoilbook::form {
namespace {

QString shown(const std::string& text) {
    return QString::fromStdString(text);
}

QString first_rows(const LoggerTable& table) {
    QStringList lines;
    for (const auto& row : table.first_rows) {
        QStringList cells;
        for (const auto& cell : row)
            cells << shown(cell);
        lines << cells.join(QStringLiteral("  |  "));
    }
    return lines.join(u'\n');
}

QString reads_as(const LoggerRows& rows, const std::string& file, const Zone& zone) {
    const QLocale locale;
    QStringList lines;
    for (const LoggerReading& reading : rows.first) {
        lines << QStringLiteral("%1   %2").arg(
            moment_shown(reading.time, zone, locale),
            reading.value ? number_shown(*reading.value, 2, locale) : ReadingsSheet::tr("missing"));
    }
    const auto count = [&](std::size_t n) { return locale.toString(qulonglong(n)); };
    lines << ReadingsSheet::tr(
                 "%1 readings, %2 without a value, %3 out of order, %4 said twice, %5 at a time that had "
                 "another value, %6 lines left out, %7 that do not read.")
                 .arg(count(rows.readings), count(rows.missing), count(rows.backwards), count(rows.twice),
                      count(rows.otherwise), count(rows.left_out), count(rows.refused));
    for (const Note& note : notes_of(rows, file, zone))
        lines << ReadingsSheet::tr("Look at this first: %1").arg(shown(one_line(note)));
    return lines.join(u'\n');
}

}  // namespace

LoggerAnswers logger_answers(const std::map<std::string, std::string>& said) {
    LoggerAnswers answers;
    for (const auto& [about, text] : said) {
        if (about == "dates") answers.dates = date_order_named(text);
        if (about == "zone") answers.zone = text;
        if (about == "column") answers.column = text;
        if (about == "rows") answers.rows = text;
        if (about == "decimal" && text.size() == 1) answers.decimal = text.front();
        if (about != "missing") continue;
        for (const QString& one : shown(text).split(u',', Qt::SkipEmptyParts))
            answers.missing.push_back(one.trimmed().remove(u'"').toStdString());
    }
    return answers;
}

ReadingsSheet::ReadingsSheet(BookSession& session, QThreadPool& pool, QString path, const QString& site,
                             QWidget* parent)
    : QWidget(parent), session_(session), pool_(pool), path_(std::move(path)) {
    auto* all = new QVBoxLayout(this);
    all->setSpacing(grid + half_grid);
    site_ = new ChoiceField(tr("Of which site"), this);
    std::vector<Choice> sites;
    for (const Row& row : session.book().rows(definition<Site>().kind())) {
        const QString name = shown(definition<Site>().read(row).site);
        sites.push_back({name, name});
    }
    site_->set_choices(sites);
    if (!site.isEmpty()) site_->offer(site, tr("the site that is shown"));
    all->addWidget(site_);
    const auto part = [&](const QString& title) {
        all->addWidget(make_label(title, Step::body, Weight::semibold, this));
        auto* label = make_label({}, Step::body, Weight::regular, this);
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        all->addWidget(label);
        return label;
    };
    rows_ = part(tr("Its first rows, as they stand"));
    assumed_ = part(tr("How it is read, and why"));
    questions_ = new QVBoxLayout;
    questions_->setSpacing(grid);
    all->addLayout(questions_);
    reads_ = part(tr("So it says"));
    problem_ = make_label({}, Step::body, Weight::semibold, this);
    problem_->setWordWrap(true);
    all->addWidget(problem_);
    take_ = make_button(ButtonKind::primary, tr("Take it in"), QStringLiteral("add"), this);
    take_->setEnabled(false);
    all->addWidget(take_, 0, Qt::AlignLeft);
    all->addStretch();
    busy_ = new BusyOverlay(this);
    connect(site_, &ChoiceField::committed, this, [this] {
        said_.clear();
        look();
    });
    connect(take_, &QPushButton::clicked, this, &ReadingsSheet::take);
    if (sites.empty())
        problem_->setText(tr("This book has no turbidity site yet: enter one under All records."));
    else
        problem_->setText(tr("Say first of which site it is."));
}

std::function<ReadingsSheet::Looked()> ReadingsSheet::looking(bool prepare) const {
    const std::string file = path_.toStdString(), name = QFileInfo(path_).fileName().toStdString();
    const std::string site = site_->chosen()->toStdString(), book_path = session_.book().path();
    const LoggerAnswers answers = logger_answers(said_);
    const Instant now = session_.now();
    return [=] {
        Looked looked;
        const auto fail = [&](const Refusals& refusals) { looked.problem = refusals_shown(refusals); };
        try {
            const auto bytes = open_regular_file(file, name, largest_file_bytes);
            const auto book = Book::open_to_read(book_path);
            if (!bytes || !book) return fail(bytes ? book.refusals() : bytes.refusals()), looked;
            if (prepare) {
                auto ready = prepare_readings(*book, site, name, **bytes, answers, now);
                if (!ready) return fail(ready.refusals()), looked;
                looked.found = std::make_shared<ReadingsTaken>(std::move(*ready));
            } else {
                auto look = look_at_readings(*book, site, name, **bytes, answers, now);
                if (!look) return fail(look.refusals()), looked;
                looked.found =
                    std::make_shared<ReadingsTaken>(ReadingsTaken{std::move(*look), 0, std::nullopt});
            }
        } catch (const std::exception& error) {
            looked.problem = QString::fromUtf8(error.what());
        }
        return looked;
    };
}

void ReadingsSheet::look() {
    if (!site_->chosen()) return;
    take_->setEnabled(false);
    busy_->begin(tr("Reading the file"), false);
    off_screen<Looked>(pool_, this, looking(false), [this](const Looked& looked) {
        busy_->end();
        show_look(looked);
    });
}

void ReadingsSheet::show_look(const Looked& looked) {
    problem_->setText(looked.problem);
    if (!looked.found) return;
    const LoggerGuess& guess = looked.found->look.guess;
    rows_->setText(first_rows(guess.table));
    QStringList assumed;
    for (const auto& one : guess.assumed)
        assumed << shown(one);
    assumed_->setText(assumed.isEmpty() ? tr("nothing yet") : assumed.join(u'\n'));
    show_questions(guess.questions);
    const bool open = !guess.questions.empty();
    reads_->setText(
        open ? tr("Known once the questions are answered.")
             : reads_as(looked.found->look.rows, QFileInfo(path_).fileName().toStdString(), session_.zone()));
    take_->setEnabled(!open && session_.writable());
}

void ReadingsSheet::show_questions(const std::vector<LoggerQuestion>& questions) {
    while (QLayoutItem* item = questions_->takeAt(0)) {
        item->widget()->deleteLater();
        delete item;
    }
    for (const LoggerQuestion& question : questions) {
        const std::string about = question.about;
        if (about == "table") {  // no answer mends it
            auto* label = make_label(tr("To be mended in a copy of the file: %1").arg(shown(question.text)),
                                     Step::body, Weight::regular, this);
            label->setWordWrap(true);
            questions_->addWidget(label);
            continue;
        }
        // A zone has more answers than can be listed; so has what is asked without choices.
        if (question.choices.empty() || about == "zone") {
            auto* field = new TextField(shown(question.text), {}, this);
            QStringList examples;
            for (const auto& choice : question.choices)
                examples << shown(choice);
            if (!examples.isEmpty())
                field->set_hint(tr("for example %1").arg(examples.join(QStringLiteral(", "))));
            connect(field, &TextField::committed, this,
                    [this, about](const QString& text) { answer(about, text); });
            questions_->addWidget(field);
            continue;
        }
        auto* field = new ChoiceField(shown(question.text), this);
        std::vector<Choice> choices;
        for (const auto& choice : question.choices)
            choices.push_back({shown(choice), shown(choice)});
        field->set_choices(choices);
        connect(field, &ChoiceField::committed, this,
                [this, about](const QString& key) { answer(about, key); });
        questions_->addWidget(field);
    }
}

void ReadingsSheet::answer(const std::string& about, const QString& text) {
    said_[about] = text.trimmed().toStdString();
    look();
}

void ReadingsSheet::take() {
    take_->setEnabled(false);
    busy_->begin(tr("Holding the file against what the book has"), false);
    const int writes = session_.writes_that_count();
    off_screen<Looked>(pool_, this, looking(true), [this, writes](const Looked& looked) {
        busy_->end();
        if (!looked.problem.isEmpty()) return problem_->setText(looked.problem);
        // What was written meanwhile may be readings of this site.
        if (writes != session_.writes_that_count()) return take();
        keep(looked);
    });
}

void ReadingsSheet::keep(const Looked& looked) {
    const std::size_t fresh = looked.found->fresh;
    const QString name = QFileInfo(path_).fileName();
    const QString site = *site_->chosen();
    if (fresh == 0)
        return emit taken(tr("The book has all readings of %1 already: nothing was written.").arg(name));
    const Refusals refusals = session_.write(
        tr("%1 taken in for %2").arg(name, site), EntryKind::import, {},
        [&](Book& book, const Act& act) -> Checked<Done> {
            const auto kept = keep_readings(book, act, site.toStdString(), name.toStdString(), *looked.found);
            if (!kept) return kept.refusals();
            return Done{};
        });
    problem_->setText(refusals_shown(refusals));
    take_->setEnabled(!refusals.empty());
    if (refusals.empty())
        emit taken(tr("%1 new readings of %2 taken in from %3.")
                       .arg(QLocale().toString(qulonglong(fresh)), site, name));
}

}  // namespace spoilbook::form
