// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QTimer>
#include <functional>
#include <optional>
#include <vector>

#include "forms/shared/receiver_settings.h"
#include "model/place/track_reading.h"

class QGeoPositionInfo;
class QIODevice;

namespace spoilbook::form {

class CheckedNmea;

/// A fix older than this, or this far ahead of the machine's clock, is not taken for a press.
inline constexpr std::int64_t fresh_ms = 10 * ms_per_second;

enum class ReceiverState {
    off,          ///< none is set up
    no_receiver,  ///< it cannot be reached; tried again by itself
    waiting,      ///< it speaks, or is reached, and has told no position yet
    fix,          ///< its newest position is at most fresh_ms old
    stale,        ///< it is older
    lost          ///< it is older, and the receiver is gone or says that it has none
};

/// The newest position of a receiver.
struct LiveFix {
    ReceiverFix fix;
    double u_m = 0;  ///< standard uncertainty (68 %): from its HDOP, else usual_position_u_m
    bool u_assumed = true;
};

/// A receiver of this vessel, read as its sentences come, and reached again by itself when it goes away.
/// Nothing here waits: devices tell when they have something.
class Receiver : public QObject {
    Q_OBJECT

 public:
    using Keep = std::function<void(const ReceiverSettings&)>;

    /// `clock` gives the present time; `keep` remembers settings that were changed.
    Receiver(std::function<Instant()> clock, ReceiverSettings settings, Keep keep, QObject* parent);
    ~Receiver() override;

    [[nodiscard]] const ReceiverSettings& settings() const { return settings_; }
    /// Takes up another receiver, or none. What the last one told is forgotten where it is another.
    void set_settings(const ReceiverSettings& settings);

    [[nodiscard]] ReceiverState state() const;
    [[nodiscard]] const std::optional<LiveFix>& newest() const { return newest_; }
    /// The newest fix where it is fresh, for a press.
    [[nodiscard]] std::optional<LiveFix> fresh() const;
    /// Now less the newest fix's own time: negative where the machine's clock is behind.
    [[nodiscard]] std::optional<std::int64_t> age_ms() const;
    /// The newest fix just came, and its time is not the machine's: one of the clocks is wrong.
    [[nodiscard]] bool clocks_differ() const;
    /// Why it cannot be reached, as the system says it; empty: it is reached.
    [[nodiscard]] const QString& problem() const { return problem_; }
    /// Fixes of the last day in order of time, at most one in five seconds but the newest.
    [[nodiscard]] const std::vector<ReceiverFix>& fixes() const { return fixes_; }

 signals:
    /// State, newest fix or settings are others.
    void changed();

 private:
    void reach();
    void reach_network();
    void reach_serial();
    void reached();
    void gone(const QString& why);
    void take(const QGeoPositionInfo& info);
    void keep(const ReceiverFix& fix);

    std::function<Instant()> clock_;
    ReceiverSettings settings_;
    Keep keep_;
    QIODevice* device_ = nullptr;
    CheckedNmea* source_ = nullptr;
    QTimer again_;
    int wait_ms_ = 0;
    QString problem_;
    bool open_ = false;
    bool says_none_ = false;
    std::optional<LiveFix> newest_;
    Instant came_;  ///< when the newest fix came, by the machine's clock
    std::vector<ReceiverFix> fixes_;
};

}  // namespace spoilbook::form
