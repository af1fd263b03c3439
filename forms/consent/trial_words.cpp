// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/consent/trial_words.h"

#include <QCoreApplication>

#include "forms/works/say.h"
#include "model/unit/time_text.h"

namespace spoilbook::form {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Trial", text);
}

}  // namespace

QString trial_sentence(const Trial& trial, const Zone& zone, const QLocale& locale) {
    if (!trial.why_not.empty())
        return tr("It cannot be tried: %1.").arg(QString::fromStdString(trial.why_not));
    QString words =
        trial.floor ? tr("It would always have been reached") : tr("It would not have been passed");
    if (trial.times == 1)
        words = (trial.floor ? tr("It would have been missed once, on %1")
                             : tr("It would have been passed once, on %1"))
                    .arg(moment_shown(*trial.first(), zone, locale));
    if (trial.times > 1)
        words =
            (trial.floor ? tr("It would have been missed %1 times, first on %2")
                         : tr("It would have been passed %1 times, first on %2"))
                .arg(locale.toString(qulonglong(trial.times)), moment_shown(*trial.first(), zone, locale));
    words += tr("; held against %1 %2")
                 .arg(locale.toString(qulonglong(trial.looked_at)), QString::fromStdString(trial.of));
    if (trial.cannot_tell > 0)
        words += tr(", of them %1 that cannot be told").arg(locale.toString(qulonglong(trial.cannot_tell)));
    if (!trial.untold.empty()) words += tr(" (%1)").arg(QString::fromStdString(trial.untold));
    return words + u'.';
}

std::vector<Column<TrialPass>> trial_columns(const Zone& zone, const QLocale& locale) {
    using Row = TrialPass;
    return {
        Column<Row>(tr("When"), {}, [=](const Row& r) { return moment_shown(r.at, zone, locale); })
            .copied_as([zone](const Row& r) { return QString::fromStdString(instant_text(r.at, zone)); }),
        Column<Row>(tr("Trip or site"), {}, [](const Row& r) { return QString::fromStdString(r.what); }),
        Column<Row>(tr("For"), {}, [](const Row& r) { return QString::fromStdString(r.member); }),
        Column<Row>(tr("Load"), {}, [](const Row& r) { return QString::fromStdString(r.load); }),
        Column<Row>(tr("How"), {}, [](const Row& r) { return QString::fromStdString(r.why); }),
    };
}

}  // namespace spoilbook::form
