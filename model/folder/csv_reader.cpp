// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/csv_reader.h"

#include <csv.h>
#include <fmt/format.h>

#include "model/folder/utf8.h"

namespace spoilbook {

namespace {

/// One row of bytes, its line end left out.
struct Record {
    std::size_t start = 0;
    std::size_t end = 0;
    std::size_t next = 0;   ///< where the row after it starts
    std::size_t lines = 0;  ///< line ends in it and after it
    bool quote_open = false;
    bool lone_return = false;  ///< stands at `end`
};

/// Quotes toggle at every quote mark (a doubled one twice), so that counting them tells a line end inside a
/// field from one behind a row; where that is wrong, libcsv finds the quoting at fault.
Record record_at(std::string_view bytes, std::size_t start) {
    Record record{start, start, start};
    bool quoted = false;
    std::size_t i = start;
    for (; i < bytes.size(); ++i) {
        const char c = bytes[i];
        if (c == '"') quoted = !quoted;
        if (c == '\n') ++record.lines;
        if (quoted || (c != '\n' && c != '\r')) continue;
        record.end = i;
        if (c == '\r' && i + 1 < bytes.size() && bytes[i + 1] == '\n') {
            ++record.lines;
            ++i;
        } else if (c == '\r' && i + 1 < bytes.size()) {
            record.lone_return = true;
        }
        record.next = i + 1;
        return record;
    }
    record.end = record.next = bytes.size();
    record.quote_open = quoted;
    return record;
}

/// libcsv with its memory, and the row that it is filling.
class RowParser {
 public:
    RowParser() {
        if (csv_init(&parser_, CSV_STRICT) != 0) throw std::bad_alloc();
    }
    ~RowParser() { csv_free(&parser_); }
    RowParser(const RowParser&) = delete;
    RowParser& operator=(const RowParser&) = delete;

    /// False where the quoting is at fault. `row` is left empty for a blank line.
    bool parse(std::string_view record, CsvRow& row) {
        row_ = &row;
        row.fields.clear();
        return feed(record) && feed("\n");
    }

 private:
    bool feed(std::string_view bytes) {
        return csv_parse(&parser_, bytes.data(), bytes.size(), on_field, on_end, this) == bytes.size();
    }
    static void on_field(void* text, std::size_t length, void* self) {
        auto& fields = static_cast<RowParser*>(self)->row_->fields;
        if (fields.size() <= most_fields) fields.emplace_back(static_cast<const char*>(text), length);
    }
    static void on_end(int, void*) {}

    csv_parser parser_{};
    CsvRow* row_ = nullptr;
};

class CsvReading {
 public:
    CsvReading(const std::string& file, const std::function<void(const CsvRow&)>& on_row,
               Complaints& complaints)
        : file_(file), on_row_(on_row), complaints_(complaints) {}

    void read(std::string_view bytes) {
        std::size_t at = 0;
        while (at < bytes.size()) {
            const Record record = record_at(bytes, at);
            if (!take(bytes, record)) return;
            row_.line += record.lines;
            at = record.next;
        }
        if (width_ == 0)
            refuse(file_, "empty-file", "the file has no header", "write the column names first");
    }

 private:
    /// False where the rest cannot be read.
    bool take(std::string_view bytes, const Record& record) {
        if (record.quote_open) {
            refuse(line(), "quoting", "a quote is opened and never closed",
                   "close it, or double it inside a text");
            return false;
        }
        if (record.lone_return) {
            const TextPlace place = place_at(bytes, record.end);
            refuse(fmt::format("{} line {} column {}", file_, place.line, place.column), "line-end",
                   "a carriage return alone", "end lines with LF or CR LF");
            return false;
        }
        if (!parser_.parse(bytes.substr(record.start, record.end - record.start), row_)) {
            refuse(line(), "quoting", "a quote stands inside a field that is not quoted",
                   "put the whole field in quotes and double the quotes inside it");
            return false;
        }
        if (!row_.fields.empty() && fits()) on_row_(row_);
        return true;
    }
    bool fits() {
        if (row_.fields.size() > most_fields) {
            refuse(line(), "too-wide", fmt::format("more than {} fields", most_fields),
                   "write one field a column");
            return false;
        }
        if (width_ == 0) width_ = row_.fields.size();
        if (row_.fields.size() != width_) {
            refuse(line(), "ragged-row",
                   fmt::format("{} fields, the header has {}", row_.fields.size(), width_),
                   "write one field a column; put a text with a comma in quotes");
            return false;
        }
        for (const auto& field : row_.fields) {
            if (field.size() <= longest_field_bytes) continue;
            refuse(line(), "too-long", fmt::format("a field of {} bytes", field.size()),
                   "a field holds 1 MiB at most");
            return false;
        }
        return true;
    }
    [[nodiscard]] std::string line() const { return fmt::format("{} line {}", file_, row_.line); }
    void refuse(std::string where, std::string code, std::string what, std::string mend) {
        complaints_.refuse(file_, {std::move(code), std::move(where), std::move(what), std::move(mend)});
    }

    const std::string& file_;
    const std::function<void(const CsvRow&)>& on_row_;
    Complaints& complaints_;
    RowParser parser_;
    CsvRow row_{1, {}};
    std::size_t width_ = 0;
};

}  // namespace

void read_csv(std::string_view bytes, const std::string& file,
              const std::function<void(const CsvRow&)>& on_row, Complaints& complaints) {
    bytes = without_byte_order_mark(bytes);
    if (auto refusal = why_not_text(bytes, file)) {
        complaints.refuse(file, std::move(*refusal));
        return;
    }
    CsvReading(file, on_row, complaints).read(bytes);
}

}  // namespace spoilbook
