// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "forms/shared/field.h"

class QLineEdit;

namespace spoilbook::form {

/// The six marks of one reading as on the paper ticket: port and starboard abreast; fore, midships, aft below
/// each other. Commits when six are in, or the four at the ends with both midships blank, or none. Marks that
/// are missing are named below once the whole group is left; what was typed stays.
class DraughtsField : public FieldBox {
    Q_OBJECT

 public:
    /// `reading` begins each box's name: "Draughts, full". `most_m` is the greatest draught that is possible.
    DraughtsField(const QString& reading, double most_m, QWidget* parent = nullptr);

    /// Shows what the book holds, four or six marks in the order FP FS MP MS AP AS. Emits nothing.
    void set_marks(const std::vector<double>& marks_m);
    /// The marks as they stand in the boxes: four or six, or none where all are blank. Nothing where one is
    /// missing, is no number or is not possible.
    [[nodiscard]] std::optional<std::vector<double>> typed_marks() const;
    /// What stands in the boxes, and back: for marks that wait for the rest while the sheet is away.
    [[nodiscard]] QStringList texts() const;
    void set_texts(const QStringList& texts);

 signals:
    void committed(const std::vector<double>& marks_m);

 protected:
    void describe(const QString& note) override;

 private:
    static constexpr std::size_t count = 6;

    QWidget* build_marks(const QString& reading);
    [[nodiscard]] QString complaint() const;
    [[nodiscard]] QString missing() const;
    void leave_box();
    void leave_group(QWidget* before, QWidget* now);
    [[nodiscard]] bool holds(const QWidget* widget) const;

    double most_m_;
    std::array<QLineEdit*, count> marks_{};
    QStringList settled_;  ///< the texts that were last committed
};

}  // namespace spoilbook::form
