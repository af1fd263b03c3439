// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "model/unit/instant.h"

namespace spoilbook {

/// One local day of one site's readings: a few numbers for wide plots, and the day's readings as bytes that
/// whoever keeps them can read.
struct StoredDay {
    Instant from;
    std::int64_t readings = 0, counted = 0, suspect = 0, failed = 0, missing = 0;
    std::optional<double> raw_low, raw_high, low, middle, high;
    std::string rows;
};

/// What is known of a series that is kept.
struct StoredSeries {
    std::int64_t id = 0;
    double interval_min = 0;
    std::int64_t readings = 0;
    std::optional<Instant> first, last;  ///< times of its first and last reading
};

/// Readings worked out from loggers' files, day by day, in a file of their own outside the book: derived,
/// found by a digest of all that they follow from, so that it never answers for what has changed since.
/// Deleting the file changes no answer. One thread at a time. Throws BookError where it cannot be used:
/// whoever asks then reads the book's own files.
class ReadingStore {
 public:
    /// Makes the file where there is none.
    explicit ReadingStore(const std::string& path);
    ~ReadingStore();
    ReadingStore(const ReadingStore&) = delete;
    ReadingStore& operator=(const ReadingStore&) = delete;

    [[nodiscard]] std::optional<StoredSeries> find(const std::string& basis) const;
    /// Keeps a series whole, or nothing of it; one of the same `owner` with another basis goes. `next` fills
    /// the next day and answers whether there was one.
    void put(const std::string& owner, const std::string& basis, const StoredSeries& series,
             const std::function<bool(StoredDay&)>& next);
    /// Days that begin in [from, to), in order; their rows only where asked.
    [[nodiscard]] std::vector<StoredDay> days(std::int64_t series, Period span, bool with_rows) const;
    /// The last day that begins at or before this; nothing where none does.
    [[nodiscard]] std::optional<Instant> day_at(std::int64_t series, Instant at) const;

 private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

}  // namespace spoilbook
