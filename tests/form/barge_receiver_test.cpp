// SPDX-License-Identifier: GPL-3.0-or-later
// A receiver's log, handed out over TCP, into the real desk; the release pressed by key.
#include "forms/barge/receiver.h"

#include <QDir>
#include <QLabel>
#include <QLineEdit>

#include "forms/barge/receiver_line.h"
#include "forms/barge/spot_line.h"
#include "model/folder/track_reader.h"
#include "model/place/nmea_track.h"
#include "tests/form/barge_wheelhouse.h"
#include "tests/support/nmea_feed.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using form::ReceiverSettings;
using form::ReceiverState;

namespace {

constexpr int patience_ms = 20000;
/// Half a digit of what the sentences of the feed carry: 0.00001 minute.
constexpr double told_deg = 0.000005 / 60;

/// The invented book with an outline of its ground, a shift that runs and a load that waits full. The ground
/// reaches 0.005° of latitude to either side of 40.585° S: 555 m (COMP, GeographicLib: 555.2 m).
Book a_book_under_way() {
    Book book = a_barge_book();
    const Id ground = book.labelled(kind("ground"), "Gannet Patch").value().id;
    const std::string outline =
        R"({"type":"Polygon","coordinates":[[[179.62,-40.59],[179.64,-40.59],[179.64,-40.58],)"
        R"([179.62,-40.58],[179.62,-40.59]]]})";
    set_field(book, by("Ana"), "ground", ground, "geometry", outline).value();
    log_trip_under_way(book);
    return book;
}

ReceiverSettings on_port(int port) {
    ReceiverSettings settings;
    settings.way = ReceiverSettings::Way::network;
    settings.host = QStringLiteral("127.0.0.1");
    settings.port = port;
    return settings;
}

struct Bridge {
    NmeaFeed feed;
    Wheelhouse w{a_book_under_way(), on_port(feed.port())};

    Bridge() {
        w.now = at("10:05");
        REQUIRE(QTest::qWaitFor([this] { return feed.reached(); }, patience_ms));
        REQUIRE(
            QTest::qWaitFor([this] { return w.receiver->state() == ReceiverState::waiting; }, patience_ms));
    }
    void tell(const QByteArray& bytes) { feed.tell(bytes); }
    /// The newest fix is of this time.
    bool has(const std::string& clock) {
        return QTest::qWaitFor(
            [&] { return w.receiver->newest() && w.receiver->newest()->fix.at == at(clock); }, patience_ms);
    }
    std::map<std::string, std::string> release() { return texts_of(w.session.book(), "release")["R-0001"]; }
    /// What stands beside the position of the release.
    QString beside() {
        QString said;
        for (const auto* line : w.page->findChildren<form::SpotLine*>())
            if (line->isVisible()) said += line->accessibleName();
        return said;
    }
};

// 10:05 in New Zealand is 21:05 UTC of the day before.
const Told at_1005{"210500.00", "031125", -40.585, 179.63};

}  // namespace

TEST_CASE("the doors pressed open with a fresh fix write its position", "[barge][receiver]") {
    Bridge b;
    b.tell(second_of(at_1005));
    REQUIRE(b.has("10:05"));
    b.w.press(Qt::Key_F7, "10:05:04");
    auto release = b.release();
    CHECK_THAT(std::stod(release["lat"]), Catch::WithinAbs(-40.585, told_deg));
    CHECK_THAT(std::stod(release["lon"]), Catch::WithinAbs(179.63, told_deg));
    // 0.9 times 5 m.
    CHECK(release["position_u_m"] == "4.5");
    CHECK(release["position_from"] == "receiver");
    CHECK(release["doors_open"] == "2025-11-04T10:05:04+13:00");
    CHECK(texts_of(b.w.session.book(), "trip")["T-0001"]["receiver_on"] == "tug");
    CHECK(b.beside().contains(QStringLiteral("inside, Gannet Patch, 555 m from its edge")));
    // One press, one entry: taken back at once.
    CHECK(b.w.session.undo().isEmpty());
    CHECK(texts_of(b.w.session.book(), "release").empty());
}

TEST_CASE("a stale fix is not taken, the desk says so, and what is typed then stands", "[barge][receiver]") {
    Bridge b;
    b.tell(second_of(at_1005));
    REQUIRE(b.has("10:05"));
    b.w.press(Qt::Key_F7, "10:05:11");
    CHECK(b.w.receiver->state() == ReceiverState::stale);
    CHECK(b.release().count("lat") == 0);
    CHECK(b.release().count("position_from") == 0);
    CHECK(b.beside().contains(QStringLiteral("was not taken (stale, 11 s old)")));
    b.w.type(QStringLiteral("Latitude"), QStringLiteral("-40.5851"));
    b.w.type(QStringLiteral("Longitude"), QStringLiteral("179.6301"));
    CHECK(b.release()["lat"] == "-40.5851");
    CHECK(b.release()["lon"] == "179.6301");
    CHECK(b.release().count("position_from") == 0);
    CHECK(b.beside().startsWith(QStringLiteral("Position: inside")));
}

TEST_CASE("a fix that comes after the doors opened is offered, and taken by a press", "[barge][receiver]") {
    Bridge b;
    b.w.press(Qt::Key_F7, "10:05");
    CHECK(b.beside().contains(QStringLiteral("waiting")));
    b.w.now = at("10:13");
    b.tell(second_of({"211300.00", "031125", -40.584, 179.631}));
    REQUIRE(b.has("10:13"));
    b.w.press(Qt::Key_F7, "10:13:02");
    CHECK(b.release().count("lat") == 0);
    QPushButton* offer = nullptr;
    for (auto* button : b.w.page->findChildren<QPushButton*>())
        if (button->isVisible() && button->text().contains(QStringLiteral("receiver at 10:13")))
            offer = button;
    REQUIRE(offer);
    offer->setFocus();
    QTest::keyClick(offer, Qt::Key_Space);
    CHECK_THAT(std::stod(b.release()["lat"]), Catch::WithinAbs(-40.584, told_deg));
    CHECK_THAT(std::stod(b.release()["lon"]), Catch::WithinAbs(179.631, told_deg));
    CHECK(b.release()["position_from"] == "receiver");
    CHECK_FALSE(offer->isVisible());
}

TEST_CASE("sentences that are damaged, without a sum, without a fix or simulated are no position",
          "[barge][receiver]") {
    Bridge b;
    const Told bad{"210501.00", "031125", -10.0, 10.0};
    b.tell(sentence(rmc(bad), 1));
    b.tell(QByteArray::fromStdString("$" + rmc(bad) + "\r\n"));
    b.tell(sentence(rmc(bad, 'V', 'N')));
    b.tell(sentence(rmc(bad, 'A', 'S')) + sentence(gga(bad, '8')) + sentence(gga(bad, '0')));
    b.tell("\xff\xfe not a sentence \r\n$GPRMC,2105");
    b.tell("\r\n" + second_of(at_1005));
    REQUIRE(b.has("10:05"));
    REQUIRE(b.w.receiver->fixes().size() == 1);
    CHECK_THAT(b.w.receiver->newest()->fix.place.lat_deg, Catch::WithinAbs(-40.585, told_deg));
}

TEST_CASE("the UTC day rolls over in the middle of a shift", "[barge][receiver]") {
    Bridge b;
    b.w.now = at("13:00");
    b.tell(second_of({"235958.00", "031125", -40.585, 179.63}));
    REQUIRE(b.has("12:59:58"));
    // The time without a date first: it is not of the day that is over.
    b.tell(sentence(gga({"000000.00", "", -40.585, 179.631})));
    b.tell(second_of({"000001.00", "041125", -40.585, 179.632}));
    REQUIRE(b.has("13:00:01"));
    for (const ReceiverFix& fix : b.w.receiver->fixes()) {
        CHECK(fix.at >= at("12:59:58"));
        CHECK(fix.at <= at("13:00:01"));
    }
}

TEST_CASE("a line that drops is reached again by itself, and meanwhile the age tells", "[barge][receiver]") {
    Bridge b;
    b.tell(second_of(at_1005));
    REQUIRE(b.has("10:05"));
    b.feed.hang_up();
    REQUIRE(QTest::qWaitFor([&] { return !b.w.receiver->problem().isEmpty(); }, patience_ms));
    CHECK(b.w.receiver->state() == ReceiverState::fix);
    b.w.now = at("10:05:20");
    CHECK(b.w.receiver->state() == ReceiverState::lost);
    CHECK_FALSE(b.w.receiver->fresh());
    REQUIRE(QTest::qWaitFor([&] { return b.feed.reached(); }, patience_ms));
    b.tell(second_of({"210519.00", "031125", -40.5851, 179.63}));
    REQUIRE(b.has("10:05:19"));
    CHECK(b.w.receiver->state() == ReceiverState::fix);
}

TEST_CASE("a receiver whose clock is not the machine's is not taken, and it is said which",
          "[barge][receiver]") {
    Bridge b;
    b.tell(second_of({"210300.00", "031125", -40.585, 179.63}));
    REQUIRE(b.has("10:03"));
    b.w.press(Qt::Key_F7, "10:05:01");
    CHECK(b.release().count("lat") == 0);
    CHECK(b.beside().contains(QStringLiteral("behind this machine's clock")));
}

TEST_CASE("the desk tells how far inside the ground she is, and keeps her track when she is alongside",
          "[barge][receiver]") {
    Bridge b;
    for (int i = 0; i < 12; ++i) {
        char time[16];
        std::snprintf(time, sizeof time, "2104%02d.00", i * 5);
        b.tell(second_of({time, "031125", -40.585 + i * 1e-5, 179.63}));
    }
    b.tell(second_of(at_1005));
    REQUIRE(b.has("10:05"));
    const auto* line = b.w.page->findChild<form::ReceiverLine*>();
    REQUIRE(QTest::qWaitFor(
        [&] { return line->accessibleDescription().contains(QStringLiteral("555 m inside Gannet Patch")); },
        patience_ms));
    CHECK(line->accessibleName().startsWith(QStringLiteral("Receiver: fix")));
    b.w.press(Qt::Key_F7, "10:05:01");
    b.w.press(Qt::Key_F7, "10:13");
    b.w.press(Qt::Key_F7, "10:16");
    b.w.press(Qt::Key_F7, "11:50");
    const Book& book = b.w.session.book();
    const auto tracks = texts_of(book, "track");
    REQUIRE(tracks.size() == 1);
    auto track = tracks.begin()->second;
    CHECK(track["trip"] == "T-0001");
    const auto bytes = book.material(track["digest"]);
    REQUIRE(bytes);
    const auto kept = read_track(*bytes, track["file"], b.w.session.zone(), std::nullopt);
    REQUIRE(kept.ok());
    REQUIRE(kept->fixes.size() == b.w.receiver->fixes().size());
    CHECK(kept->fixes.back().at == at("10:05"));
    for (std::size_t i = 0; i < kept->fixes.size(); ++i)
        CHECK_THAT(kept->fixes[i].place.lat_deg,
                   Catch::WithinAbs(b.w.receiver->fixes()[i].place.lat_deg, 0.5e-7));
}

TEST_CASE("a position typed in the wrong hemisphere is asked about once and stays as it was typed",
          "[barge][receiver]") {
    Wheelhouse w(a_book_under_way());
    w.press(Qt::Key_F7, "10:05");
    w.type(QStringLiteral("Latitude"), QStringLiteral("40.585"));
    w.type(QStringLiteral("Longitude"), QStringLiteral("179.63"));
    const auto asked = [&w] {
        for (const auto* label : w.page->findChildren<QLabel*>())
            if (label->isVisible() &&
                label->text().contains(QStringLiteral("from Gannet Patch: is the latitude's sign right?")))
                return true;
        return false;
    };
    CHECK(asked());
    CHECK(texts_of(w.session.book(), "release")["R-0001"]["lat"] == "40.585");
    w.type(QStringLiteral("Latitude"), QStringLiteral("-40.585"));
    CHECK_FALSE(asked());
    CHECK(texts_of(w.session.book(), "release")["R-0001"]["lat"] == "-40.585");
}

// Logs of real receivers, where SPOILBOOK_NMEA_LOGS names a folder of them.
TEST_CASE("what is taken live from a real receiver's log is what its file holds", "[barge][receiver]") {
    const QDir folder(qEnvironmentVariable("SPOILBOOK_NMEA_LOGS", QStringLiteral("/nowhere")));
    for (const QString& name : folder.entryList({QStringLiteral("*.log")}, QDir::Files)) {
        INFO(name.toStdString());
        QFile file(folder.filePath(name));
        REQUIRE(file.open(QIODevice::ReadOnly));
        const QByteArray bytes = file.readAll();
        NmeaFeed feed;
        form::Receiver receiver([] { return at("10:05"); }, on_port(feed.port()), nullptr, nullptr);
        REQUIRE(QTest::qWaitFor([&] { return feed.reached(); }, patience_ms));
        feed.tell(bytes + second_of({"210500.00", "031149", -40.585, 179.63}));
        REQUIRE(QTest::qWaitFor(
            [&] {
                return receiver.newest() && std::abs(receiver.newest()->fix.place.lat_deg + 40.585) < 1e-6;
            },
            patience_ms));
        const auto whole = read_nmea(bytes.toStdString(), at("10:05"));
        std::size_t strange = 0;
        for (const ReceiverFix& live : receiver.fixes()) {
            const auto same = [&live](const ReceiverFix& fix) {
                return std::abs(fix.at - live.at) < 1000 &&
                       std::abs(fix.place.lat_deg - live.place.lat_deg) < 1e-5 &&
                       std::abs(fix.place.lon_deg - live.place.lon_deg) < 1e-5;
            };
            const bool last = std::abs(live.place.lat_deg + 40.585) < 1e-6;
            if (!last && (!whole || std::none_of(whole->fixes.begin(), whole->fixes.end(), same))) ++strange;
        }
        CHECK(strange == 0);
    }
}
