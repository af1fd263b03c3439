// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <map>
#include <vector>

#include "forms/shared/book_session.h"
#include "forms/shared/field.h"
#include "forms/shared/time_typed.h"

namespace spoilbook::form {

/// Fields of one record, each written to the book when it is left. The fields stand wherever a page lays
/// them; this ties them to the record. What was refused stays as typed, with the reason below, until the
/// book's own value changes. A time that stands and cannot be true beside another is told beside its box.
class RecordForm : public QObject {
    Q_OBJECT

 public:
    RecordForm(BookSession& session, const Kind& kind, QObject* parent);

    /// A box for one column, named as desk_words.h names it (or `title`).
    FieldBox* add(const std::string& column, QWidget* parent, const QString& title = {});
    /// Turns to the record of this label; empty: to none, and every box is blank and off.
    void show(const std::string& label);
    [[nodiscard]] const std::string& label() const { return label_; }
    [[nodiscard]] const Kind& kind() const { return kind_; }
    [[nodiscard]] FieldBox* box(const std::string& column) const;
    /// Bare times are read from here on; nothing: as the last such time.
    void set_after(std::optional<Instant> after) { after_ = after; }
    /// The same of one column alone; nothing: as the others.
    void set_after_of(const std::string& column, std::optional<Instant> after) { after_of_[column] = after; }
    /// Little room: below a time stands its day only where it is not the day of set_after, or of now.
    void set_short_times() { short_times_ = true; }
    /// The reason that goes with each change, for what is signed.
    void set_reason(std::function<QString()> reason) { reason_ = std::move(reason); }
    /// Writes what was refused for want of a reason, now that there is one.
    void try_again();
    /// A question about an odd number in a column; empty: it is not odd.
    void set_odd(const std::string& column, std::function<QString(double)> odd);
    /// The record as it would be with what stands in the boxes now; a box that does not read has the book's
    /// value. Nothing where there is no record.
    [[nodiscard]] std::optional<Row> typed_row() const;

 signals:
    void written();
    /// The boxes show what the book holds: another record, or a value that changed.
    void shown();
    /// Something was typed into a box, and is not written yet.
    void edited();

 private:
    struct Bound {
        const Field* field = nullptr;
        std::size_t index = 0;
        FieldBox* box = nullptr;
        Value shown;
        std::function<void(const Value&)> show;
        std::function<QString(double)> odd;
        std::function<std::string()> typed;  ///< what stands in the box, as the book would be given it
    };

    FieldBox* add_number(Bound& bound, const QString& title, QWidget* parent);
    FieldBox* add_time(Bound& bound, const QString& title, QWidget* parent);
    FieldBox* add_choice(Bound& bound, const QString& title, QWidget* parent);
    FieldBox* add_text(Bound& bound, const QString& title, QWidget* parent);
    FieldBox* add_marks(Bound& bound, const QString& title, QWidget* parent);
    void refresh();
    void show_row(bool all);
    void put(const Bound& bound, const std::string& text);
    void shorten(const Bound& bound) const;
    /// Beside each time what it cannot be beside another; a box whose text was refused keeps its own problem.
    void show_order();
    [[nodiscard]] TimeContext context(const Bound& bound) const;

    BookSession& session_;
    const Kind& kind_;
    std::string label_;
    std::optional<Instant> after_;
    std::map<std::string, std::optional<Instant>> after_of_;
    bool short_times_ = false;
    std::function<QString()> reason_;
    std::vector<std::unique_ptr<Bound>> bounds_;
    std::map<std::string, std::string> refused_;
    std::map<std::string, QString> out_of_order_;  ///< what show_order said last, by column
};

}  // namespace spoilbook::form
