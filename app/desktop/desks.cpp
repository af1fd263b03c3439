// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desktop/desks.h"

#include <QDir>
#include <QStandardPaths>

#include "forms/barge/barge_desk.h"
#include "forms/barge/receiver.h"
#include "forms/consent/conditions_leaf.h"
#include "forms/consent/duties_leaf.h"
#include "forms/consent/releases_leaf.h"
#include "forms/consent/return_leaf.h"
#include "forms/consent/turbidity_leaf.h"
#include "forms/shared/main_window.h"
#include "forms/shared/records_leaf.h"
#include "forms/works/burndown_leaf.h"
#include "forms/works/load_sheet.h"
#include "forms/works/pace_leaf.h"
#include "forms/works/plant_leaf.h"
#include "forms/works/reconcile_leaf.h"
#include "forms/works/volumes_leaf.h"
#include "model/book/digest.h"

namespace spoilbook {
namespace {

using form::BookSession;
using form::Desk;
using form::Leaf;

QString tr(const char* text) {
    return form::MainWindow::tr(text);
}

Leaf records(BookSession& session, const char* key, const QString& title, const char* icon,
             std::vector<std::string> kinds) {
    return {QString::fromLatin1(key), title, QString::fromLatin1(icon),
            [&session, kinds](QWidget* parent) -> QWidget* {
                auto* leaf = new form::RecordsLeaf(session, kinds, parent);
                leaf->add_view({"load", tr("How much is in it"), QStringLiteral("drop"),
                                form::load_sheet_width, [&session](const QString& label) -> QWidget* {
                                    return new form::LoadSheet(session, label.toStdString());
                                }});
                return leaf;
            }};
}

/// Where a book's worked-out readings are kept: a file of its own for each book, made anew where it is
/// missing.
std::string kept_readings(const BookSession& session) {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::CacheLocation);
    if (folder.isEmpty() || !QDir().mkpath(folder)) return {};
    const std::string name = hex_text(sha256(session.path().toStdString())).substr(0, 16);
    return QDir(folder).filePath(QStringLiteral("readings-") + QString::fromStdString(name)).toStdString();
}

/// A page over the shared figures.
template <class Page>
Leaf page(form::FiguresSource& figures, const char* key, const QString& title, const char* icon) {
    return {QString::fromLatin1(key), title, QString::fromLatin1(icon),
            [&figures](QWidget* parent) -> QWidget* { return new Page(figures, parent); }};
}

}  // namespace

std::vector<Desk> make_desks(BookSession& session, form::Memory& memory) {
    // Lives as long as the book is open: worked out once, shown by every page that counts.
    auto& figures = *new form::FiguresSource(session, &session);
    auto* receiver = new form::Receiver(
        [&session] { return session.now(); }, memory.receiver(),
        [&memory](const form::ReceiverSettings& to) { memory.set_receiver(to); }, &session);
    std::vector<Leaf> barge = form::barge_leaves(session, receiver);
    barge.push_back(records(session, "records", tr("Records"), "table",
                            {"trip", "load", "shift", "station", "tally", "delay"}));
    return {
        {QStringLiteral("barge"), tr("Barge desk"), tr("skipper, tug master"), QStringLiteral("barge"),
         std::move(barge)},
        {QStringLiteral("works"),
         tr("Works desk"),
         tr("manager"),
         QStringLiteral("claim"),
         {page<form::BurndownLeaf>(figures, "burndown", tr("Burn-down"), "chart"),
          page<form::VolumesLeaf>(figures, "volumes", tr("Volumes"), "drop"),
          page<form::PaceLeaf>(figures, "pace", tr("Hours and pace"), "delay"),
          page<form::ReconcileLeaf>(figures, "reconcile", tr("Against the bed"), "sounding"),
          {QStringLiteral("plant"), tr("Barge tables"), QStringLiteral("barge"),
           [&session](QWidget* parent) -> QWidget* { return new form::PlantLeaf(session, parent); }},
          records(session, "records", tr("Records"), "table",
                  {"claim", "barge", "dredger", "bucket", "tug", "factor", "survey", "removed"})}},
        {QStringLiteral("consent"),
         tr("Consent desk"),
         tr("environmental officer"),
         QStringLiteral("limit"),
         {page<form::ConditionsLeaf>(figures, "limits", tr("Conditions"), "limit"),
          page<form::ReleasesLeaf>(figures, "releases", tr("Releases"), "release"),
          page<form::DutiesLeaf>(figures, "duties", tr("Duties"), "calendar"),
          {QStringLiteral("turbidity"), tr("Turbidity"), QStringLiteral("drop"),
           [&figures, &memory](QWidget* parent) -> QWidget* {
               const QString book = figures.session().path();
               return new form::TurbidityLeaf(
                   figures, kept_readings(figures.session()),
                   {memory.logger_folder(book),
                    [&memory, book](const QString& folder) { memory.set_logger_folder(book, folder); }},
                   parent);
           }},
          page<form::ReturnLeaf>(figures, "return", tr("Return"), "return"),
          records(session, "records", tr("All records"), "table", {})}},
    };
}

}  // namespace spoilbook
