// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>

#include "forms/shared/field.h"
#include "forms/shared/time_typed.h"

class QLineEdit;

namespace spoilbook::form {

/// A time in the book's zone, typed as on a sheet (time_typed.h). Below it stands which day it was taken for,
/// with the zone. Commits when the box is left or Enter is pressed; what is refused stays as typed.
class TimeField : public FieldBox {
    Q_OBJECT

 public:
    /// `context` gives zone and present time whenever they are needed: forms read no clock.
    TimeField(const QString& label, std::function<TimeContext()> context, QWidget* parent = nullptr);

    [[nodiscard]] std::optional<Instant> value() const { return value_; }
    /// Shows what the book holds. Emits nothing.
    void set_value(std::optional<Instant> value);
    [[nodiscard]] QString text() const;
    void offer(Instant at, const QString& why);
    /// A question about an odd time; an empty text: it is not odd.
    void set_odd(std::function<QString(Instant)> odd) { odd_ = std::move(odd); }

 signals:
    void committed(std::optional<spoilbook::Instant> value);
    void odd_kept(spoilbook::Instant value);

 private:
    void leave();
    void show_reading();

    std::function<TimeContext()> context_;
    std::function<QString(Instant)> odd_;
    QLineEdit* edit_;
    std::optional<Instant> value_;
    QString settled_;
};

}  // namespace spoilbook::form
