// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/barge/draughts_field.h"

#include <QApplication>
#include <QGridLayout>
#include <QLineEdit>
#include <algorithm>

#include "forms/shared/label.h"
#include "forms/shared/number_typed.h"

namespace spoilbook::form {
namespace {

constexpr std::array<std::size_t, 4> ends{0, 1, 4, 5};

QString mark_name(std::size_t i) {
    const std::array<QString, 6> names{
        DraughtsField::tr("fore port"),     DraughtsField::tr("fore starboard"),
        DraughtsField::tr("midships port"), DraughtsField::tr("midships starboard"),
        DraughtsField::tr("aft port"),      DraughtsField::tr("aft starboard"),
    };
    return names.at(i);
}

}  // namespace

DraughtsField::DraughtsField(const QString& reading, double most_m, QWidget* parent)
    : FieldBox(DraughtsField::tr("%1, m").arg(reading), parent), most_m_(most_m) {
    set_editor(build_marks(reading));
    editor()->setFocusProxy(marks_.front());
    settled_ = texts();
    connect(qApp, &QApplication::focusChanged, this, &DraughtsField::leave_group);
}

QWidget* DraughtsField::build_marks(const QString& reading) {
    auto* group = new QWidget(this);
    auto* places = new QGridLayout(group);
    places->setContentsMargins(3, 0, 0, 0);
    places->setHorizontalSpacing(grid);
    places->setVerticalSpacing(half_grid);
    const QString columns[] = {tr("Port"), tr("Starboard")};
    const QString rows[] = {tr("Fore"), tr("Midships"), tr("Aft")};
    for (int column = 0; column < 2; ++column) {
        places->addWidget(make_quiet(columns[column], Step::small, group), 0, column + 1, Qt::AlignRight);
        places->setColumnStretch(column + 1, 1);
    }
    for (std::size_t i = 0; i < count; ++i) {
        const int row = int(i / 2) + 1;
        if (i % 2 == 0) places->addWidget(make_quiet(rows[i / 2], Step::small, group), row, 0);
        auto* mark = new QLineEdit(group);
        mark->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
        mark->setTextMargins(half_grid, 0, half_grid, 0);
        mark->setMinimumWidth(8 * grid);
        mark->setAccessibleName(tr("%1, %2 in m").arg(reading, mark_name(i)));
        places->addWidget(mark, row, int(i % 2) + 1);
        connect(mark, &QLineEdit::textEdited, this, &FieldBox::edited);
        connect(mark, &QLineEdit::editingFinished, this, &DraughtsField::leave_box);
        marks_[i] = mark;
    }
    return group;
}

void DraughtsField::set_marks(const std::vector<double>& marks_m) {
    QStringList shown;
    for (std::size_t i = 0; i < count; ++i)
        shown << QString();
    const auto put = [&](std::size_t box, double mark_m) {
        shown[qsizetype(box)] = number_shown(mark_m, 2, locale());
    };
    for (std::size_t i = 0; i < std::min(marks_m.size(), count); ++i)
        put(marks_m.size() == ends.size() ? ends[i] : i, marks_m[i]);
    for (std::size_t i = 0; i < count; ++i)
        marks_[i]->setText(shown[qsizetype(i)]);
    settled_ = shown;
    show_problem({});
}

QStringList DraughtsField::texts() const {
    QStringList all;
    for (const QLineEdit* mark : marks_)
        all << mark->text().trimmed();
    return all;
}

void DraughtsField::set_texts(const QStringList& texts) {
    for (std::size_t i = 0; i < count && qsizetype(i) < texts.size(); ++i)
        marks_[i]->setText(texts[qsizetype(i)]);
    show_problem(complaint());
}

std::optional<std::vector<double>> DraughtsField::typed_marks() const {
    std::vector<double> marks_m;
    if (!complaint().isEmpty()) return std::nullopt;
    for (const QLineEdit* mark : marks_) {
        if (const auto number = number_typed(mark->text(), locale())) marks_m.push_back(*number);
    }
    return marks_m;
}

// What keeps the reading from being written; empty: nothing does.
QString DraughtsField::complaint() const {
    for (std::size_t i = 0; i < count; ++i) {
        const QString text = marks_[i]->text().trimmed();
        if (text.isEmpty()) continue;
        const auto number = number_typed(text, locale());
        if (!number)
            return tr("“%1”, %2, is not a number. Write it like %3.")
                .arg(text, mark_name(i), number_shown(1.85, 2, locale()));
        if (*number >= 0 && *number <= most_m_) continue;
        QString words = tr("%1 m, %2, is not possible: it lies between 0 and %3 m.")
                            .arg(text, mark_name(i), number_shown(most_m_, 0, locale()));
        if (*number > 0 && *number / 100 <= most_m_)
            words +=
                u' ' +
                tr("Typed in centimetres? That would be %1 m.").arg(number_shown(*number / 100, 2, locale()));
        return words;
    }
    return missing();
}

QString DraughtsField::missing() const {
    const auto blank = [this](std::size_t i) { return marks_[i]->text().trimmed().isEmpty(); };
    const bool none = std::all_of(marks_.begin(), marks_.end(),
                                  [](const QLineEdit* mark) { return mark->text().trimmed().isEmpty(); });
    if (none) return {};
    const bool four = blank(2) && blank(3);
    QStringList names;
    for (std::size_t i = 0; i < count; ++i) {
        const bool midships = i == 2 || i == 3;
        if (blank(i) && !(four && midships)) names << mark_name(i);
    }
    if (names.isEmpty()) return {};
    return tr("Not in the book yet: %1 missing. Six marks are read, or the four at the ends.")
        .arg(names.join(QStringLiteral(", ")));
}

void DraughtsField::leave_box() {
    const QStringList now = texts();
    if (now == settled_) return;
    const auto marks_m = typed_marks();
    if (!marks_m) return;
    settled_ = now;
    show_problem({});
    emit committed(*marks_m);
}

void DraughtsField::leave_group(QWidget* before, QWidget* now) {
    if (!holds(before) || holds(now)) return;
    const QString words = complaint();
    if (!words.isEmpty()) show_problem(words);
}

bool DraughtsField::holds(const QWidget* widget) const {
    return widget && (widget == this || isAncestorOf(widget));
}

void DraughtsField::describe(const QString& note) {
    FieldBox::describe(note);
    for (QLineEdit* mark : marks_) {
        if (mark) mark->setAccessibleDescription(note);
    }
}

}  // namespace spoilbook::form
