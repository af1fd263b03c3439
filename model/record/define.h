// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>

#include "model/record/kind.h"
#include "model/record/reading.h"

namespace spoilbook {

/// Builds a Kind and, beside each field, how it lands in the struct R: one description, nothing said twice.
template <class R>
class Definition {
 public:
    Definition(std::string name, std::string file, std::string doc) {
        kind_.name = std::move(name);
        kind_.file = std::move(file);
        kind_.doc = std::move(doc);
    }

    Definition& in(FileForm form, std::string list = "") {
        kind_.form = form;
        kind_.list = std::move(list);
        return *this;
    }
    Definition& label(std::string name, std::string R::*member, std::string doc) {
        kind_.label.push_back(name);
        return text(std::move(name), member, std::move(doc));
    }
    /// A label that the trade does not give: our own optional column.
    Definition& own_label(std::string name, std::string R::*member) {
        kind_.label_required = false;
        kind_.label.push_back(name);
        text(std::move(name), member, "a label for this row, where it has one");
        return added();
    }
    Definition& also_label(std::string name) {
        kind_.label.push_back(std::move(name));
        return *this;
    }
    Definition& text(std::string name, std::string R::*member, std::string doc) {
        return put({std::move(name), FieldType::text, std::move(doc)}, reading(member));
    }
    Definition& number(std::string name, std::optional<double> R::*member, std::string unit, double low,
                       double high, std::string doc) {
        return put(bounded({std::move(name), FieldType::number, std::move(doc), std::move(unit)}, low, high),
                   reading(member));
    }
    Definition& integer(std::string name, std::optional<std::int64_t> R::*member, double low, double high,
                        std::string doc) {
        return put(bounded({std::move(name), FieldType::integer, std::move(doc)}, low, high),
                   reading(member));
    }
    Definition& instant(std::string name, std::optional<Instant> R::*member, std::string doc) {
        return put({std::move(name), FieldType::instant, std::move(doc)}, reading(member));
    }
    Definition& instant_or_day(std::string name, std::optional<Instant> R::*member, std::string doc) {
        instant(std::move(name), member, std::move(doc));
        kind_.fields.back().day_allowed = true;
        return *this;
    }
    Definition& day(std::string name, std::string R::*member, std::string doc) {
        return put({std::move(name), FieldType::day, std::move(doc)}, reading(member));
    }
    Definition& choice(std::string name, std::string R::*member, std::vector<std::string> choices,
                       std::string doc) {
        put({std::move(name), FieldType::choice, std::move(doc)}, reading(member));
        kind_.fields.back().choices = std::move(choices);
        return *this;
    }
    Definition& numbers(std::string name, std::vector<double> R::*member, std::string unit, double low,
                        double high, std::string doc) {
        return put(bounded({std::move(name), FieldType::numbers, std::move(doc), std::move(unit)}, low, high),
                   reading(member));
    }
    Definition& table(std::string name, Table R::*member, std::string doc) {
        return put({std::move(name), FieldType::table, std::move(doc)}, reading(member));
    }
    Definition& json(std::string name, std::string R::*member, std::string doc) {
        return put({std::move(name), FieldType::json, std::move(doc)}, reading(member));
    }
    Definition& ref(std::string name, Id R::*member, std::string to, std::string doc,
                    std::string within = "") {
        put({std::move(name), FieldType::reference, std::move(doc)}, reading(member));
        kind_.fields.back().refers_to = std::move(to);
        kind_.fields.back().within = std::move(within);
        return *this;
    }
    /// The number just described is a latitude or a longitude.
    Definition& on(Axis axis) {
        kind_.fields.back().axis = axis;
        return *this;
    }
    /// Of the integer just described the values, of the numbers how many may stand.
    Definition& allowed(std::vector<std::int64_t> counts) {
        kind_.fields.back().allowed = std::move(counts);
        return *this;
    }
    /// Marks the field just described as our own optional one.
    Definition& added() {
        kind_.fields.back().added = true;
        return *this;
    }
    /// The version of a book's tables that brought the field just described or, said first, the whole kind.
    Definition& since(int version) {
        (kind_.fields.empty() ? kind_.since : kind_.fields.back().since) = version;
        return *this;
    }
    Definition& ordered(std::string start, std::string end) {
        kind_.ordered.emplace_back(std::move(start), std::move(end));
        return *this;
    }

    [[nodiscard]] const Kind& kind() const { return kind_; }
    [[nodiscard]] R read(const Row& row) const {
        R record;
        record.id = row.id;
        for (std::size_t i = 0; i < readings_.size(); ++i)
            readings_[i](record, row.values[i]);
        return record;
    }

 private:
    using Reading = std::function<void(R&, const Value&)>;

    static Field bounded(Field field, double low, double high) {
        field.low = low;
        field.high = high;
        field.bounded = true;
        return field;
    }
    template <class M>
    static Reading reading(M R::*member) {
        return [member](R& record, const Value& value) { read_value(value, record.*member); };
    }
    Definition& put(Field field, Reading reading) {
        kind_.fields.push_back(std::move(field));
        readings_.push_back(std::move(reading));
        return *this;
    }

    Kind kind_;
    std::vector<Reading> readings_;
};

/// The definition of each struct of words.md; one specialisation beside each family.
template <class R>
const Definition<R>& definition();

}  // namespace spoilbook
