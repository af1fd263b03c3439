// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/works/say.h"

#include <QDate>
#include <algorithm>
#include <array>

#include "forms/shared/number_typed.h"
#include "forms/shared/time_typed.h"
#include "model/consent/quantity_text.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Figures", text);
}

}  // namespace

QString rounded_up(double value, int decimals, const QLocale& locale) {
    return number_shown(spoilbook::rounded_up(value, decimals), decimals, locale);
}

QString rounded_down(double value, int decimals, const QLocale& locale) {
    return number_shown(spoilbook::rounded_down(value, decimals), decimals, locale);
}

QString share_used(double share, const QLocale& locale) {
    return rounded_up(share * 100, 1, locale) + QStringLiteral(" %");
}

QString probability_shown(double p, const QLocale& locale) {
    const ShownChance shown = shown_chance(p);
    const QString number = number_shown(shown.percent, shown.decimals, locale) + QStringLiteral(" %");
    return shown.bound == 0 ? number : QChar::fromLatin1(shown.bound) + QStringLiteral(" ") + number;
}

QString day_shown(Day day, const QLocale& locale) {
    return locale.toString(QDate(day.year, day.month, day.day), QStringLiteral("d MMM yyyy"));
}

QString moment_shown(Instant at, const Zone& zone, const QLocale& locale) {
    return day_shown(zone.day_of(at), locale) + u' ' + time_shown(at, zone);
}

QString due_shown(Instant due, const Zone& zone, const QLocale& locale) {
    const auto ended = day_ending(due, zone);
    return ended ? tr("%1, 24:00").arg(day_shown(*ended, locale)) : moment_shown(due, zone, locale);
}

QString state_word(std::string_view word) {
    // For the translator: the words of model/ that come here.
    static constexpr std::array words{
        QT_TRANSLATE_NOOP("States", "no limit yet"), QT_TRANSLATE_NOOP("States", "within"),
        QT_TRANSLATE_NOOP("States", "warned"),       QT_TRANSLATE_NOOP("States", "was over"),
        QT_TRANSLATE_NOOP("States", "below"),        QT_TRANSLATE_NOOP("States", "over"),
        QT_TRANSLATE_NOOP("States", "cannot tell"),  QT_TRANSLATE_NOOP("States", "breached"),
        QT_TRANSLATE_NOOP("States", "complied"),     QT_TRANSLATE_NOOP("States", "nothing yet"),
        QT_TRANSLATE_NOOP("States", "not judged"),   QT_TRANSLATE_NOOP("States", "coming"),
        QT_TRANSLATE_NOOP("States", "due"),          QT_TRANSLATE_NOOP("States", "overdue"),
        QT_TRANSLATE_NOOP("States", "done"),         QT_TRANSLATE_NOOP("States", "done late"),
        QT_TRANSLATE_NOOP("States", "nil"),          QT_TRANSLATE_NOOP("States", "in time"),
        QT_TRANSLATE_NOOP("States", "late"),         QT_TRANSLATE_NOOP("States", "not yet"),
        QT_TRANSLATE_NOOP("States", "no answer"),
    };
    const auto* known = std::find(words.begin(), words.end(), word);
    const std::string other(word);
    return QCoreApplication::translate("States", known == words.end() ? other.c_str() : *known);
}

QString month_shown(const std::string& month, const QLocale& locale) {
    const QString text = QString::fromStdString(month);
    const QDate first = QDate::fromString(text + QStringLiteral("-01"), Qt::ISODate);
    return first.isValid() ? locale.toString(first, QStringLiteral("MMM yyyy")) : text;
}

QString book_text(const std::string& text) {
    QString shown = QString::fromStdString(text);
    return shown.replace(QStringLiteral("m3"), QStringLiteral("m³"));
}

QString method_shown(Method method) {
    switch (method) {
        case Method::ullage:
            return tr("ullage");
        case Method::draughts:
            return tr("draughts");
        case Method::tally:
            return tr("tally");
        case Method::stated:
            break;
    }
    return tr("stated");
}

QString limit_unit(const Quantity& quantity) {
    return QString::fromStdString(unit_text(quantity));
}

int limit_decimals(const Quantity& quantity) {
    return shown_decimals(quantity);
}

double limit_scale(const Quantity& quantity) {
    return shown_scale(quantity);
}

QString limit_name(const LimitState& state) {
    QString name = QString::fromStdString(state.condition->condition);
    if (!state.member) return name;
    const QString member =
        state.member->name.empty() ? tr("none named") : QString::fromStdString(state.member->name);
    return name + QStringLiteral(" · ") + member;
}

namespace {

QString unit_word(WindowUnit unit) {
    switch (unit) {
        case WindowUnit::days:
            return tr("day");
        case WindowUnit::weeks:
            return tr("week");
        case WindowUnit::months:
            return tr("month");
        case WindowUnit::years:
            break;
    }
    return tr("year");
}

QString rolling_words(const WindowRule& rule) {
    switch (rule.unit) {
        case WindowUnit::days:
            return tr("any %1 days").arg(rule.n);
        case WindowUnit::weeks:
            return tr("any %1 weeks").arg(rule.n);
        case WindowUnit::months:
            return tr("any %1 months").arg(rule.n);
        case WindowUnit::years:
            break;
    }
    return tr("any %1 years").arg(rule.n);
}

QString window_words(const WindowRule& rule) {
    switch (rule.kind) {
        case WindowKind::term:
            return tr("whole term");
        case WindowKind::calendar:
            return unit_word(rule.unit);
        case WindowKind::consent_year:
            return tr("consent year");
        case WindowKind::rolling:
            return rolling_words(rule);
        case WindowKind::mean:
            return tr("mean of %1 years").arg(rule.n);
        case WindowKind::campaign:
            return tr("campaign");
        case WindowKind::phase:
            return tr("phase");
        case WindowKind::trip:
            break;
    }
    return tr("last trip");
}

}  // namespace

QString limit_window(const LimitState& state, const Zone& zone, const QLocale& locale) {
    const WindowRule& rule = state.quantity.window;
    const QString words = window_words(rule);
    const bool says_all = rule.kind == WindowKind::term || rule.kind == WindowKind::trip;
    if (says_all || !state.window_start) return words;
    return tr("%1, from %2").arg(words, day_shown(zone.day_of(*state.window_start), locale));
}

}  // namespace spoilbook::form
