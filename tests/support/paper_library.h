// SPDX-License-Identifier: GPL-3.0-or-later
// A library with one invented book in memory, for tests and pictures of the window.
#pragma once

#include <QLabel>

#include "forms/shared/desk.h"

namespace spoilbook::test {

using namespace form;

// 30 May 2026 18:00 in Pacific/Auckland.
constexpr Instant paper_now{1780120800000};

class PaperSession : public Session {
 public:
    explicit PaperSession(QString path) : path_(std::move(path)) {}

    [[nodiscard]] QString path() const override { return path_; }
    [[nodiscard]] QString harbour() const override { return QStringLiteral("Marram Harbour Board"); }
    [[nodiscard]] QString works() const override { return QStringLiteral("Ferry Basin and Outer Bar Cut"); }
    [[nodiscard]] Zone zone() const override { return Zone::named("Pacific/Auckland").value(); }
    [[nodiscard]] Instant now() const override { return paper_now; }
    [[nodiscard]] bool writable() const override { return why_not.isEmpty(); }
    [[nodiscard]] QString why_not_writable() const override { return why_not; }
    [[nodiscard]] std::optional<Instant> as_at() const override { return as_at_; }
    void set_as_at(std::optional<Instant> at) override {
        as_at_ = at;
        emit changed();
    }
    [[nodiscard]] QList<Writer> people() const override {
        return {{QStringLiteral("Ana"), QStringLiteral("skipper")},
                {QStringLiteral("Bram"), QStringLiteral("tug master")}};
    }
    [[nodiscard]] QString person() const override { return person_; }
    QString set_person(const QString& name) override {
        person_ = name;
        emit changed();
        return {};
    }
    [[nodiscard]] QString undo_text() const override { return done; }
    [[nodiscard]] QString redo_text() const override { return undone; }
    QString undo() override {
        if (!stands_on_it.isEmpty()) return stands_on_it;
        undone = done;
        done.clear();
        emit changed();
        return {};
    }
    QString redo() override {
        done = undone;
        undone.clear();
        emit changed();
        return {};
    }
    [[nodiscard]] std::optional<Written> last_written() const override {
        if (done.isEmpty()) return std::nullopt;
        return Written{done, paper_now - 4 * ms_per_minute};
    }
    [[nodiscard]] std::function<QString(const GoingOn&)> back_up(const QString&) const override {
        return [](const GoingOn&) { return QString(); };
    }

    void forget_person() { person_.clear(); }

    QString done = QStringLiteral("load L-0597 closed by ullage");
    QString undone;
    QString why_not;
    QString stands_on_it;

 private:
    QString path_;
    QString person_ = QStringLiteral("Ana");
    std::optional<Instant> as_at_;
};

class PaperLibrary : public Library {
 public:
    Ready open(const QString& path, const GoingOn&) override {
        return [this, path]() -> OpenedBook {
            if (path.contains(QStringLiteral("gone"))) {
                return {nullptr,
                        {},
                        QStringLiteral("%1 is not there any more. Look where it was moved to.").arg(path)};
            }
            auto session = std::make_unique<PaperSession>(path);
            session->why_not = why_not;
            if (nobody) session->forget_person();
            last = session.get();
            return {std::move(session), desks, {}};
        };
    }
    Ready create_from_folder(const QString&, const QString& path, const GoingOn& going_on) override {
        return open(path, going_on);
    }
    Ready take_back(const QString&, const QString& path, const GoingOn& going_on) override {
        return open(path, going_on);
    }
    [[nodiscard]] bool has_sample() const override { return true; }
    Ready open_sample(const GoingOn& going_on) override {
        return open(QStringLiteral("/srv/books/sample.sbook"), going_on);
    }

    std::vector<Desk> desks;
    QString why_not;
    bool nobody = false;  ///< no one is named yet where a book opens
    PaperSession* last = nullptr;
};

/// The three desks with the trade's leaves; `make` fills each.
inline std::vector<Desk> paper_desks(
    const std::function<QWidget*(const QString& key, QWidget* parent)>& make) {
    const auto leaf = [&make](const char* key, const char* title, const char* icon_name) {
        const QString name = QString::fromLatin1(key);
        return Leaf{name, QString::fromLatin1(title), QString::fromLatin1(icon_name),
                    [make, name](QWidget* parent) { return make(name, parent); }};
    };
    return {
        {QStringLiteral("barge"),
         QStringLiteral("Barge desk"),
         QStringLiteral("skipper, tug master"),
         QStringLiteral("barge"),
         {leaf("shift", "Running shift", "shift"), leaf("load", "Load alongside", "barge"),
          leaf("trip", "Tug trip", "trip"), leaf("sounding", "Soundings", "sounding"),
          leaf("sign", "Read and sign", "sign")}},
        {QStringLiteral("works"),
         QStringLiteral("Works desk"),
         QStringLiteral("manager"),
         QStringLiteral("claim"),
         {leaf("burn", "Burn-down", "chart"), leaf("claims", "Claims", "claim")}},
        {QStringLiteral("consent"),
         QStringLiteral("Consent desk"),
         QStringLiteral("environmental officer"),
         QStringLiteral("limit"),
         {leaf("conditions", "Conditions", "limit"), leaf("water", "Turbidity watch", "drop"),
          leaf("return", "Return", "return"), leaf("calendar", "Obligations", "calendar"),
          leaf("journal", "Journal", "journal")}},
    };
}

}  // namespace spoilbook::test
