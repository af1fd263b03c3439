// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "model/place/crs.h"
#include "model/place/polygon.h"
#include "model/unit/byte_source.h"

class GDALDataset;

namespace spoilbook {

/// Part of a grid: `columns` from `column` on, `rows` from `row` on.
struct GridWindow {
    int column = 0, row = 0, columns = 0, rows = 0;

    [[nodiscard]] std::size_t size() const {
        return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
    }
    bool operator==(const GridWindow&) const = default;
};

/// A place in a grid: columns from its first edge to the right, rows downward. The middle of the first pixel
/// is (0.5, 0.5).
struct GridPlace {
    double column = 0, row = 0;
};

/// No harbour's bed lies so deep or so high, m: -9999, 10⁶ and the like are none.
inline constexpr double no_bed_beyond_m = 9'000;

/// A grid's file that opens and does not read to its end.
class BrokenGrid : public std::runtime_error {
 public:
    using std::runtime_error::runtime_error;
};

/// The numbers of a surveyed grid as its file has them, on the map that the file states. Read in windows:
/// memory does not grow with the file. One thread at a time.
class BedGrid {
 public:
    /// A raster of one of the allowed formats (gdal_safety.h); its first band. Refused, with code "grid" and
    /// `file` as the place: what no allowed format reads; a grid that is turned against its map or has no
    /// place on one; a map or numbers not in metres; a text grid with words among its numbers or cut short;
    /// pixels under 1 mm; over a million columns or rows. Throws what `bytes` throws.
    static Checked<BedGrid> open(const ByteSource& bytes, const std::string& file);

    BedGrid(BedGrid&&) noexcept;
    BedGrid& operator=(BedGrid&&) noexcept;
    ~BedGrid();

    [[nodiscard]] int columns() const;
    [[nodiscard]] int rows() const;
    /// m² of one pixel on the grid's map.
    [[nodiscard]] double pixel_m2() const;
    /// Places on the grid's map and in the grid.
    [[nodiscard]] GridPlace in_grid(EastNorth place) const;
    [[nodiscard]] EastNorth on_map(GridPlace place) const;

    /// The numbers of a window row by row, NaN where there is none: where the file says so, and where no bed
    /// can be (no_bed_beyond_m), for many a file marks what is blank by a number and does not say which.
    /// Throws BrokenGrid where the file does not read. REQUIRES the window inside the grid.
    [[nodiscard]] std::vector<double> numbers(const GridWindow& window) const;

    /// Whether its format says that its numbers are elevations, positive upward (BAG does).
    [[nodiscard]] bool is_elevation_by_format() const;
    /// The file's map as WKT; empty where the file does not say.
    [[nodiscard]] const std::string& map_wkt() const { return map_wkt_; }

 private:
    struct Closes {
        void operator()(GDALDataset* dataset) const;
    };
    explicit BedGrid(std::unique_ptr<GDALDataset, Closes> dataset);
    [[nodiscard]] std::string driver() const;
    /// Why it cannot be used, in words; empty where it can. Reads map and place.
    std::string why_unfit();

    std::unique_ptr<GDALDataset, Closes> dataset_;
    EastNorth first_corner_;
    double step_east_m_ = 0, step_north_m_ = 0;  ///< of a column, of a row; north is usually negative
    double scale_ = 1, offset_ = 0;              ///< number = stored · scale + offset
    std::string map_wkt_;
};

/// Where places of the book's map lie on a grid's map, and back. A grid that does not say its map is taken to
/// be on the book's.
class GridMap {
 public:
    /// Refused, code "grid", where no published way between the two maps is known.
    static Checked<GridMap> between(const Crs& book, const BedGrid& grid, const std::string& file);

    /// With points along its edges where the maps differ, for what is straight on one is bent on the other.
    /// An empty area where the grid's map does not reach all of it.
    [[nodiscard]] Area on_grid(const Area& area) const;
    [[nodiscard]] EastNorth in_book(EastNorth on_grid) const;
    [[nodiscard]] bool is_one_map() const { return ways_ == nullptr; }

 private:
    struct Ways;
    std::shared_ptr<const Ways> ways_;  ///< null: one map
};

}  // namespace spoilbook
