// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>

#include "forms/shared/field.h"
#include "model/unit/position_text.h"

class QLineEdit;

namespace spoilbook::form {

/// What a number may be. Its range is the unit's (ullage 0–50 m); what is possible but odd is asked once.
struct UnitRule {
    QString unit;  ///< "m³"; shown in the box
    double least;  ///< smallest that is possible
    double most;   ///< largest that is possible
    int decimals;  ///< of a value that is shown
    bool may_be_blank = true;
    std::function<QString(double)> odd = {};  ///< a question about an odd value; empty text: it is not odd
    std::optional<Axis> axis = {};            ///< of degrees on it: typed as positions are
};

/// A number with its unit. Commits when the box is left or Enter is pressed: `committed` is the moment to
/// write it down. A value that is refused is not committed and stays as it was typed, with the problem below.
class UnitField : public FieldBox {
    Q_OBJECT

 public:
    UnitField(const QString& label, UnitRule rule, QWidget* parent = nullptr);

    /// The last committed value; nothing where the box is blank or was refused so far.
    [[nodiscard]] std::optional<double> value() const { return value_; }
    /// Shows what the book holds. Emits nothing.
    void set_value(std::optional<double> value);
    /// Exactly what stands in the box.
    [[nodiscard]] QString text() const;
    /// What stands in the box as the number that it would be; or why it is none.
    [[nodiscard]] Checked<double> typed() const;
    void offer(double value, const QString& why);

 signals:
    void committed(std::optional<double> value);
    /// The person said that an odd value is so.
    void odd_kept(double value);

 private:
    void leave();
    void refuse(const QString& why);
    void commit(std::optional<double> value);
    [[nodiscard]] QString shown(double value) const;

    UnitRule rule_;
    QLineEdit* edit_;
    std::optional<double> value_;
    QString settled_;  ///< the text that was last committed or refused
};

}  // namespace spoilbook::form
