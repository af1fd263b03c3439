// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>
#include <queue>

#include "model/place/polygon.h"

namespace spoilbook {
namespace {

/// Distance from a place to one edge, and the direction in which that distance grows fastest. Straight on
/// within `straight_m` of the place: nothing but the edge's own line, no end of it, is nearest there.
struct Pull {
    double distance;
    double away_x;
    double away_y;
    double straight_m;
};

Pull pull_of(EastNorth a, EastNorth b, EastNorth place) {
    const double ax = a.easting_m - place.easting_m;
    const double ay = a.northing_m - place.northing_m;
    const double dx = b.easting_m - a.easting_m;
    const double dy = b.northing_m - a.northing_m;
    const double length_squared = dx * dx + dy * dy;
    const double along =
        length_squared > 0 ? std::clamp(-(ax * dx + ay * dy) / length_squared, 0.0, 1.0) : 0.0;
    const double qx = ax + along * dx;
    const double qy = ay + along * dy;
    const double distance = std::hypot(qx, qy);
    if (distance == 0) return {0, 0, 0, 0};
    return {distance, -qx / distance, -qy / distance, std::min(along, 1 - along) * std::sqrt(length_squared)};
}

/// The least, over all weightings of the two edges, of weighted distance + reach * |weighted direction|:
/// no place within reach is farther from both than that (curvature apart).
double bound_of_pair(const Pull& p, const Pull& q, double reach) {
    const double ex = q.away_x - p.away_x;
    const double ey = q.away_y - p.away_y;
    const double squared = ex * ex + ey * ey;
    const double weight =
        squared > 0 ? std::clamp(-(p.away_x * ex + p.away_y * ey) / squared, 0.0, 1.0) : 0.0;
    const double gx = p.away_x + weight * ex;
    const double gy = p.away_y + weight * ey;
    return p.distance + weight * (q.distance - p.distance) + reach * std::hypot(gx, gy);
}

struct Square {
    EastNorth centre;
    double half_side;
    double distance;  ///< signed, at the centre
    double bound;     ///< no place in the square is farther inside than this

    bool operator<(const Square& other) const { return bound < other.bound; }
};

class Search {
 public:
    explicit Search(const Area& area) : area_(area) {
        for (const Polygon& part : area.parts) {
            for (const Ring& ring : part.rings) {
                for (std::size_t i = 0; i < ring.points.size(); ++i) {
                    const EastNorth before = ring.points[i == 0 ? ring.points.size() - 1 : i - 1];
                    if (before != ring.points[i]) edges_.push_back({before, ring.points[i]});
                }
            }
        }
    }

    EastNorth run() {
        double west = edges_.front().b.easting_m, east = west;
        double south = edges_.front().b.northing_m, north = south;
        for (const Edge& edge : edges_) {
            west = std::min(west, edge.b.easting_m);
            east = std::max(east, edge.b.easting_m);
            south = std::min(south, edge.b.northing_m);
            north = std::max(north, edge.b.northing_m);
        }
        const double extent = std::max(east - west, north - south);
        const double precision = std::clamp(1e-6 * extent, boundary_width_m, 1e-3);
        add({(west + east) / 2, (south + north) / 2}, extent / 2);
        while (!open_.empty() && open_.top().bound > best_.distance + precision) {
            const Square square = open_.top();
            open_.pop();
            const double quarter = square.half_side / 2;
            for (const double up : {-quarter, quarter}) {
                for (const double right : {-quarter, quarter}) {
                    add({square.centre.easting_m + right, square.centre.northing_m + up}, quarter);
                }
            }
        }
        return best_.centre;
    }

 private:
    struct Edge {
        EastNorth a, b;
    };

    void add(EastNorth centre, double half_side) {
        Square square{centre, half_side, signed_distance_m(area_, centre), 0};
        square.bound = bound_of(square);
        if (square.distance > best_.distance) best_ = square;
        open_.push(square);
    }

    /// Distance changes by no more than a metre a metre: that bounds any square. A square well inside is
    /// bounded far better by the edges near it, since along a corridor one side comes nearer as the other
    /// goes. Each edge is taken as if straight on; the distance to an edge's end bends away from that by no
    /// more than reach² / (2 (distance - reach)).
    [[nodiscard]] double bound_of(const Square& square) const {
        const double reach = square.half_side * std::sqrt(2.0);
        const double plain = square.distance + reach;
        if (square.distance <= reach) return plain;
        Pull nearest{std::numeric_limits<double>::infinity(), 0, 0, 0};
        std::vector<Pull> near;
        for (const Edge& edge : edges_) {
            const Pull pull = pull_of(edge.a, edge.b, square.centre);
            if (pull.distance <= square.distance + 2 * reach) near.push_back(pull);
            if (pull.distance < nearest.distance) nearest = pull;
        }
        const double bend = reach * reach / (2 * (square.distance - reach));
        double bound = plain;
        for (const Pull& other : near) {
            const bool straight = std::min(nearest.straight_m, other.straight_m) > reach;
            bound = std::min(bound, bound_of_pair(nearest, other, reach) + (straight ? 0 : bend));
        }
        return bound;
    }

    const Area& area_;
    std::vector<Edge> edges_;
    std::priority_queue<Square> open_;
    Square best_{{std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::quiet_NaN()},
                 0,
                 -std::numeric_limits<double>::infinity(),
                 0};
};

}  // namespace

EastNorth farthest_inside(const Area& area) {
    // Also false for NaN: what has no area has no inside to search.
    if (!(area_m2(area) > 0)) {
        return {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::quiet_NaN()};
    }
    return Search(area).run();
}

}  // namespace spoilbook
