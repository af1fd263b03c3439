// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_shape.h"

#include <array>
#include <map>
#include <vector>

#include "model/turbidity/logger_count.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_parts.h"
#include "model/turbidity/logger_time.h"

namespace spoilbook {

namespace {

constexpr std::size_t looked_at = 2000;

/// A time of day is rarer above a table than a date: such a line counts as four.
bool better(const LoggerShape& a, const LoggerShape& b) {
    return a.lines * (a.clock ? 4 : 1) > b.lines * (b.clock ? 4 : 1);
}

/// Dates of a line: whether there is one, and whether a time of day goes with it.
struct Dated {
    bool date = false, clock = false;
};

Dated dated(const std::vector<std::string_view>& fields) {
    Dated found;
    for (const auto field : fields) {
        if (const auto time = logger_time(field)) {
            found.date = found.date || time->has_date;
            found.clock = found.clock || time->has_clock;
        }
    }
    return found;
}

/// A line of two fields or more, as it stands and parted.
struct Parted {
    std::size_t number;
    std::string_view line;
    const std::vector<std::string_view>& fields;
};

/// Hands on each such line of the first two thousand.
template <class Use>
void each_parted(const ByteSource& bytes, char delimiter, const Use& use) {
    LoggerLines lines(bytes);
    std::string_view line;
    std::vector<std::string_view> fields;
    while (lines.next(line) && lines.number() <= looked_at) {
        split_line(line, delimiter, fields);
        if (fields.size() >= 2) use(Parted{lines.number(), line, fields});
    }
}

LoggerShape dated_under(const ByteSource& bytes, char delimiter) {
    std::map<std::pair<bool, std::size_t>, LoggerShape> by_fields;
    each_parted(bytes, delimiter, [&](const Parted& row) {
        const auto says = dated(row.fields);
        if (!says.date) return;
        LoggerShape& shape = by_fields[{says.clock, row.fields.size()}];
        if (shape.lines++ == 0) shape.first = row.number;
        shape.fields = row.fields.size();
        shape.delimiter = delimiter;
        shape.clock = says.clock;
    });
    LoggerShape best;
    for (const auto& [key, shape] : by_fields) {
        if (!better(best, shape)) best = shape;  // of two as good the one with more fields
    }
    return best;
}

/// Numbers in one column that are likely times and go up, as measurements seldom do.
LoggerShape counted_under(const ByteSource& bytes, char delimiter, DateOrder order) {
    struct Column {
        LoggerShape shape;
        double last = 0;
        std::size_t rising = 0;
    };
    std::map<std::pair<std::size_t, std::size_t>, Column> columns;
    each_parted(bytes, delimiter, [&](const Parted& row) {
        for (std::size_t k = 0; k < row.fields.size(); ++k) {
            const auto count = logger_count(row.fields[k], order);
            if (!count) continue;
            auto& [shape, last, rising] = columns[{row.fields.size(), k}];
            rising += *count > last ? 1 : 0;
            last = *count;
            if (shape.lines++ == 0) shape.first = row.number;
            shape.fields = row.fields.size();
            shape.column = k;
        }
    });
    LoggerShape best;
    for (auto& [key, column] : columns) {
        if (column.shape.lines <= best.lines || 10 * column.rising < 9 * column.shape.lines) continue;
        best = column.shape;
        best.delimiter = delimiter;
        best.counted = order;
    }
    return best;
}

/// Rows below heads that name the parts of a date.
LoggerShape named_under(const ByteSource& bytes, char delimiter) {
    LoggerShape best, shape;
    std::vector<std::string_view> heads;
    each_parted(bytes, delimiter, [&](const Parted& row) {
        if (const auto time = parts_time(row.fields, shape.parts)) {
            if (shape.lines++ == 0) shape.first = row.number;
            shape.fields = std::max(shape.fields, row.fields.size());
            shape.clock = shape.clock || time->has_clock;
            return;
        }
        split_heads(row.line, delimiter, heads);
        const auto parts = parts_named(heads);
        if (!have_date(parts)) return;
        if (better(shape, best)) best = shape;
        shape = {};
        shape.parts = parts;
        shape.delimiter = delimiter;
    });
    return better(shape, best) ? shape : best;
}

/// Rows without heads that begin with what looks like a year and the day of it, which goes up from row to row
/// or stays.
LoggerShape unnamed_under(const ByteSource& bytes, char delimiter) {
    LoggerShape shape;
    std::size_t all = 0, back = 0;
    std::optional<LoggerTime> last;
    each_parted(bytes, delimiter, [&](const Parted& row) {
        const auto& fields = row.fields;
        if (fields.size() < 3) return;
        ++all;
        const auto parts = likely_parts(fields);
        if (!parts || (shape.lines > 0 && (*parts != shape.parts || fields.size() != shape.fields))) return;
        const auto time = parts_time(fields, *parts);
        if (!time) return;
        const auto day_of = [](const LoggerTime& of) { return Day{of.first, of.second, of.third}; };
        back += last && day_of(*time) < day_of(*last) ? 1 : 0;
        last = time;
        if (shape.lines++ == 0) shape.first = row.number;
        shape.fields = fields.size();
        shape.parts = *parts;
    });
    if (shape.lines < 2 || 10 * shape.lines < 9 * all || 10 * back > shape.lines) return {};
    shape.delimiter = delimiter;
    shape.parts_named = false;
    return shape;
}

}  // namespace

LoggerShape shape_of(const ByteSource& bytes) {
    constexpr std::array delimiters{'\t', ';', ',', '|'};
    LoggerShape best;
    for (const char delimiter : delimiters) {
        if (const auto shape = dated_under(bytes, delimiter); better(shape, best)) best = shape;
    }
    for (const char delimiter : delimiters) {
        if (const auto shape = named_under(bytes, delimiter); better(shape, best)) best = shape;
    }
    // Blanks stand inside dates and words too: they part fields only where nothing else does.
    if (best.lines == 0) best = dated_under(bytes, ' ');
    if (const auto shape = named_under(bytes, ' '); better(shape, best)) best = shape;
    if (best.lines > 0) return best;
    for (const auto order : counted_orders) {
        for (const char delimiter : delimiters) {
            if (const auto shape = counted_under(bytes, delimiter, order); shape.lines > best.lines)
                best = shape;
        }
        if (best.lines == 0) best = counted_under(bytes, ' ', order);
        if (best.lines > 0) return best;
    }
    for (const char delimiter : delimiters) {
        if (const auto shape = unnamed_under(bytes, delimiter); shape.lines > best.lines) best = shape;
    }
    return best.lines > 0 ? best : unnamed_under(bytes, ' ');
}

}  // namespace spoilbook
