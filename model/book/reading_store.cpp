// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/reading_store.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <zstd.h>

#include "model/book/book_error.h"

namespace spoilbook {

struct ReadingStore::Inside {
    std::string path;
    std::unique_ptr<SQLite::Database> db;
};

namespace {

// Raised whenever what a day holds is worked out or written otherwise: older files are then made anew.
constexpr int store_version = 1;
constexpr std::size_t largest_day_bytes = std::size_t{1} << 28;

std::string packed(const std::string& rows) {
    ZSTD_CCtx* context = ZSTD_createCCtx();
    ZSTD_CCtx_setParameter(context, ZSTD_c_compressionLevel, 1);
    // A file that rots must not become another answer.
    ZSTD_CCtx_setParameter(context, ZSTD_c_checksumFlag, 1);
    std::string out(ZSTD_compressBound(rows.size()), '\0');
    const auto size = ZSTD_compress2(context, out.data(), out.size(), rows.data(), rows.size());
    ZSTD_freeCCtx(context);
    if (ZSTD_isError(size) != 0) throw BookError("a day of readings cannot be packed");
    out.resize(size);
    return out;
}

std::string unpacked(const void* bytes, std::size_t size) {
    const auto whole = ZSTD_getFrameContentSize(bytes, size);
    if (whole > largest_day_bytes) throw BookError("a kept day of readings is damaged");
    std::string out(whole, '\0');
    const auto got = ZSTD_decompress(out.data(), out.size(), bytes, size);
    if (ZSTD_isError(got) != 0 || got != whole) throw BookError("a kept day of readings is damaged");
    return out;
}

std::optional<double> number(const SQLite::Column& column) {
    return column.isNull() ? std::nullopt : std::optional(column.getDouble());
}

std::optional<Instant> instant(const SQLite::Column& column) {
    return column.isNull() ? std::nullopt : std::optional(Instant{column.getInt64()});
}

void bind(SQLite::Statement& statement, int place, const std::optional<double>& value) {
    if (value)
        statement.bind(place, *value);
    else
        statement.bind(place);
}

void bind(SQLite::Statement& statement, int place, const std::optional<Instant>& value) {
    if (value)
        statement.bind(place, value->utc_ms);
    else
        statement.bind(place);
}

void make_store_tables(SQLite::Database& db) {
    if (db.execAndGet("PRAGMA user_version").getInt() == store_version) return;
    SQLite::Transaction whole(db);
    for (const char* table : {"series", "day", "day_rows"})
        db.exec(std::string("DROP TABLE IF EXISTS ") + table);
    db.exec(
        "CREATE TABLE series (id INTEGER PRIMARY KEY, basis TEXT NOT NULL UNIQUE, owner TEXT NOT NULL,"
        " interval_min REAL NOT NULL, readings INTEGER NOT NULL, first INTEGER, last INTEGER) STRICT");
    db.exec(
        "CREATE TABLE day (series INTEGER, begins INTEGER, readings INTEGER, counted INTEGER, suspect "
        "INTEGER,"
        " failed INTEGER, missing INTEGER, raw_low REAL, raw_high REAL, low REAL, middle REAL, high REAL,"
        " PRIMARY KEY (series, begins)) STRICT, WITHOUT ROWID");
    db.exec(
        "CREATE TABLE day_rows (series INTEGER, begins INTEGER, packed BLOB, PRIMARY KEY (series, begins))"
        " STRICT");
    db.exec("PRAGMA user_version = " + std::to_string(store_version));
    whole.commit();
}

template <class F>
auto in_store(const std::string& path, F&& work) {
    try {
        return work();
    } catch (const SQLite::Exception& error) {
        throw BookError(path + ": " + error.what());
    }
}

void write_day(SQLite::Statement& numbers, SQLite::Statement& rows, std::int64_t series,
               const StoredDay& day) {
    numbers.reset();
    numbers.bind(1, series);
    numbers.bind(2, day.from.utc_ms);
    int place = 3;
    for (const std::int64_t n : {day.readings, day.counted, day.suspect, day.failed, day.missing})
        numbers.bind(place++, n);
    for (const auto& value : {day.raw_low, day.raw_high, day.low, day.middle, day.high})
        bind(numbers, place++, value);
    numbers.exec();
    const std::string pack = packed(day.rows);
    rows.reset();
    rows.bind(1, series);
    rows.bind(2, day.from.utc_ms);
    rows.bind(3, pack.data(), static_cast<int>(pack.size()));
    rows.exec();
}

}  // namespace

ReadingStore::ReadingStore(const std::string& path) : inside_(std::make_unique<Inside>()) {
    inside_->path = path;
    in_store(path, [&] {
        inside_->db =
            std::make_unique<SQLite::Database>(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, 10'000);
        inside_->db->exec("PRAGMA journal_mode = WAL");
        make_store_tables(*inside_->db);
    });
}

ReadingStore::~ReadingStore() = default;

std::optional<StoredSeries> ReadingStore::find(const std::string& basis) const {
    return in_store(inside_->path, [&]() -> std::optional<StoredSeries> {
        SQLite::Statement row(*inside_->db,
                              "SELECT id, interval_min, readings, first, last FROM series WHERE basis = ?");
        row.bind(1, basis);
        if (!row.executeStep()) return std::nullopt;
        return StoredSeries{row.getColumn(0).getInt64(), row.getColumn(1).getDouble(),
                            row.getColumn(2).getInt64(), instant(row.getColumn(3)),
                            instant(row.getColumn(4))};
    });
}

void ReadingStore::put(const std::string& owner, const std::string& basis, const StoredSeries& series,
                       const std::function<bool(StoredDay&)>& next) {
    in_store(inside_->path, [&] {
        auto& db = *inside_->db;
        SQLite::Transaction whole(db, SQLite::TransactionBehavior::IMMEDIATE);
        for (const char* sql :
             {"DELETE FROM day_rows WHERE series IN (SELECT id FROM series WHERE owner = ?)",
              "DELETE FROM day WHERE series IN (SELECT id FROM series WHERE owner = ?)",
              "DELETE FROM series WHERE owner = ?"}) {
            SQLite::Statement gone(db, sql);
            gone.bind(1, owner);
            gone.exec();
        }
        SQLite::Statement head(db,
                               "INSERT INTO series (basis, owner, interval_min, readings, first, last)"
                               " VALUES (?, ?, ?, ?, ?, ?)");
        head.bind(1, basis);
        head.bind(2, owner);
        head.bind(3, series.interval_min);
        head.bind(4, series.readings);
        bind(head, 5, series.first);
        bind(head, 6, series.last);
        head.exec();
        const std::int64_t id = db.getLastInsertRowid();
        SQLite::Statement numbers(db, "INSERT INTO day VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        SQLite::Statement rows(db, "INSERT INTO day_rows VALUES (?, ?, ?)");
        for (StoredDay day; next(day); day = {})
            write_day(numbers, rows, id, day);
        whole.commit();
    });
}

std::vector<StoredDay> ReadingStore::days(std::int64_t series, Period span, bool with_rows) const {
    return in_store(inside_->path, [&] {
        SQLite::Statement row(
            *inside_->db,
            std::string("SELECT day.begins, readings, counted, suspect, failed, missing, raw_low, raw_high,"
                        " low, middle, high") +
                (with_rows ? ", packed FROM day JOIN day_rows USING (series, begins)" : " FROM day") +
                " WHERE day.series = ? AND day.begins >= ? AND day.begins < ? ORDER BY day.begins");
        row.bind(1, series);
        row.bind(2, span.from.utc_ms);
        row.bind(3, span.to.utc_ms);
        std::vector<StoredDay> days;
        while (row.executeStep()) {
            const auto count = [&](int column) { return row.getColumn(column).getInt64(); };
            StoredDay day{Instant{count(0)},
                          count(1),
                          count(2),
                          count(3),
                          count(4),
                          count(5),
                          number(row.getColumn(6)),
                          number(row.getColumn(7)),
                          number(row.getColumn(8)),
                          number(row.getColumn(9)),
                          number(row.getColumn(10)),
                          {}};
            if (with_rows) {
                const auto pack = row.getColumn(11);
                day.rows = unpacked(pack.getBlob(), static_cast<std::size_t>(pack.getBytes()));
            }
            days.push_back(std::move(day));
        }
        return days;
    });
}

std::optional<Instant> ReadingStore::day_at(std::int64_t series, Instant at) const {
    return in_store(inside_->path, [&]() -> std::optional<Instant> {
        SQLite::Statement row(*inside_->db, "SELECT max(begins) FROM day WHERE series = ? AND begins <= ?");
        row.bind(1, series);
        row.bind(2, at.utc_ms);
        if (!row.executeStep()) return std::nullopt;
        return instant(row.getColumn(0));
    });
}

}  // namespace spoilbook
