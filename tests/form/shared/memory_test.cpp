// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/memory.h"

#include <QSettings>
#include <QTemporaryDir>
#include <catch2/catch.hpp>

using namespace spoilbook::form;

TEST_CASE("how the receiver is reached is remembered, and off where nobody said", "[memory]") {
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("s.ini"));
    ReceiverSettings to;
    to.way = ReceiverSettings::Way::serial;
    to.device = QStringLiteral("/dev/ttyUSB0");
    to.baud = 38400;
    to.host = QStringLiteral("10.0.0.7");
    to.port = 2000;
    to.stands_on = QStringLiteral("barge");
    {
        QSettings settings(file, QSettings::IniFormat);
        Memory memory(settings);
        CHECK(memory.receiver() == ReceiverSettings{});
        memory.set_receiver(to);
    }
    QSettings settings(file, QSettings::IniFormat);
    Memory memory(settings);
    CHECK(memory.receiver() == to);
    settings.setValue(QStringLiteral("receiver/port"), QStringLiteral("many"));
    settings.setValue(QStringLiteral("receiver/baud"), -1);
    CHECK(memory.receiver().port == ReceiverSettings{}.port);
    CHECK(memory.receiver().baud == ReceiverSettings{}.baud);
}
