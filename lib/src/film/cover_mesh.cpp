// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/film/cover_mesh.hpp"

#include <algorithm>
#include <cmath>

#include "coverframe/base/error.hpp"
#include "coverframe/plan/geometry.hpp"
#include "coverframe/units/crossing.hpp"

namespace coverframe {

namespace {

/// A rail narrower than this carries no column, and an end nearer to the rail's end than this has no fan [m].
constexpr double least_breadth = 0.02;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

using Place = std::array<double, 3>;

/// A line of nodes from the ridge down to the rail.
struct Column {
    int apex = 0;  ///< film node on the ridge
    Place rail{};
    bool edge = false;  ///< held all the way down
    int pieces = 1;     ///< of the rail to the next column
};

class Mesher {
public:
    Mesher(const Plan& plan, const Layout& layout, int rows) : plan_(plan), layout_(layout), rows_(rows) {}

    CoverMesh build() {
        lay_ridge();
        const int first = stations_.front();
        const int last = stations_.back();
        const double stem = in_m(plan_.boat.rail.front().x);
        const double transom = in_m(plan_.boat.rail.back().x);
        const bool bow_fan = x_of(first) - stem > least_breadth;
        const bool stern_fan = transom - x_of(last) > least_breadth;
        for (const int i : stations_) columns_.push_back({apex_[at(i)], rail_of(x_of(i), 1), false});
        columns_.front().edge = !bow_fan;
        columns_.back().edge = !stern_fan;
        if (stern_fan) add_fan(apex_[at(last)], stern_corners(x_of(last)));
        const std::size_t turn = columns_.size();
        for (auto i = stations_.rbegin(); i != stations_.rend(); ++i) {
            columns_.push_back({apex_[at(*i)], rail_of(x_of(*i), -1), false});
        }
        columns_[turn].edge = !stern_fan;
        columns_.back().edge = !bow_fan;
        if (bow_fan) add_fan(apex_[at(first)], bow_corners(x_of(first)));
        lay_columns();
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            const bool open_stern = !stern_fan && k + 1 == turn;
            const bool open_bow = !bow_fan && k + 1 == columns_.size();
            if (!open_stern && !open_bow) fill(k, (k + 1) % columns_.size());
        }
        join_rails();
        require_sound(cover_.mesh);
        return std::move(cover_);
    }

private:
    [[nodiscard]] double x_of(int station) const {
        return layout_.frame.nodes[at(layout_.stations[at(station)])].at[0];
    }

    [[nodiscard]] Place rail_of(double x, int side) const {
        const RailStation rail = *rail_at(plan_.boat, from_m(x));
        return {x, side * in_m(rail.half_breadth), in_m(rail.z)};
    }

    int add_node(const Place& place, int frame_node, bool held, bool outlet) {
        cover_.mesh.nodes.push_back(place);
        cover_.frame_node.push_back(frame_node);
        cover_.held.push_back(held);
        cover_.outlet.push_back(outlet);
        return static_cast<int>(cover_.mesh.nodes.size()) - 1;
    }

    /// Film nodes on the ridge line where the rail has some breadth.
    void lay_ridge() {
        apex_.assign(layout_.stations.size(), -1);
        for (int i = 0; i < static_cast<int>(layout_.stations.size()); ++i) {
            const std::optional<RailStation> rail = rail_at(plan_.boat, from_m(x_of(i)));
            if (!rail || in_m(rail->half_breadth) < least_breadth) continue;
            const int node = layout_.stations[at(i)];
            apex_[at(i)] = add_node(layout_.frame.nodes[at(node)].at, node, false, false);
            stations_.push_back(i);
        }
        if (stations_.size() < 2) {
            throw InputError("film.mesh.rail", "/boat/rail", "",
                             "the ridge line must run over a rail of at least 20 mm half breadth");
        }
    }

    /// Corners of the rail from starboard round the transom to port.
    [[nodiscard]] std::vector<Place> stern_corners(double from) const {
        std::vector<Place> corners{rail_of(from, 1)};
        for (const RailStation& r : plan_.boat.rail) {
            if (in_m(r.x) > from) corners.push_back({in_m(r.x), in_m(r.half_breadth), in_m(r.z)});
        }
        mirror_onto(corners);
        return corners;
    }

    /// Corners of the rail from port round the stem to starboard.
    [[nodiscard]] std::vector<Place> bow_corners(double from) const {
        std::vector<Place> corners{rail_of(from, -1)};
        for (auto r = plan_.boat.rail.rbegin(); r != plan_.boat.rail.rend(); ++r) {
            if (in_m(r->x) < from) corners.push_back({in_m(r->x), -in_m(r->half_breadth), in_m(r->z)});
        }
        mirror_onto(corners);
        return corners;
    }

    /// Goes on round to the other side, through the middle.
    static void mirror_onto(std::vector<Place>& corners) {
        const Place end = corners.back();
        if (end[1] != 0) corners.push_back({end[0], 0, end[2]});
        for (std::size_t i = corners.size() - 1; i-- > 0;)
            corners.push_back({corners[i][0], -corners[i][1], corners[i][2]});
    }

    /// Columns at the corners, without the first and the last; between them the rail is cut into pieces as long as
    /// those along the ridge.
    void add_fan(int apex, const std::vector<Place>& corners) {
        const double spacing = (x_of(stations_.back()) - x_of(stations_.front())) / double(stations_.size() - 1);
        for (std::size_t i = 1; i < corners.size(); ++i) {
            const Place& a = corners[i - 1];
            const Place& b = corners[i];
            const double length = std::hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
            columns_.back().pieces = std::max(1, static_cast<int>(std::lround(length / spacing)));
            if (i + 1 < corners.size()) columns_.push_back({apex, b, false});
        }
    }

    void lay_columns() {
        nodes_.resize(columns_.size());
        for (std::size_t k = 0; k < columns_.size(); ++k) {
            const Column& c = columns_[k];
            const Place top = cover_.mesh.nodes[at(c.apex)];
            if (c.edge) cover_.outlet[at(c.apex)] = true;
            nodes_[k].push_back(c.apex);
            for (int j = 1; j <= rows_; ++j) {
                const double s = double(j) / rows_;
                Place place;
                for (std::size_t d = 0; d < 3; ++d)
                    place[d] = j == rows_ ? c.rail[d] : top[d] + s * (c.rail[d] - top[d]);
                nodes_[k].push_back(add_node(place, -1, c.edge || j == rows_, c.edge || j == rows_));
            }
        }
    }

    /// Triangles between two columns. Port is the mirror of starboard, down to the diagonals.
    void fill(std::size_t a, std::size_t b) {
        const bool starboard = columns_[a].rail[1] + columns_[b].rail[1] > 0;
        std::vector<int> above{nodes_[a][0]};
        if (columns_[a].apex != columns_[b].apex) above.push_back(nodes_[b][0]);
        for (int j = 1; j <= rows_; ++j) {
            std::vector<int> below = row_between(a, b, j);
            fill_row(above, below, starboard);
            above = std::move(below);
        }
        add_to_rails(above);
    }

    /// Goes on along the rail, or begins anew behind an end without a fan.
    void add_to_rails(const std::vector<int>& row) {
        std::vector<std::vector<int>>& rails = cover_.rails;
        if (rails.empty() || rails.back().back() != row.front()) rails.emplace_back(1, row.front());
        rails.back().insert(rails.back().end(), row.begin() + 1, row.end());
    }

    /// The last line may end where the first one begins.
    void join_rails() {
        std::vector<std::vector<int>>& rails = cover_.rails;
        if (rails.size() < 2 || rails.back().back() != rails.front().front()) return;
        rails.back().insert(rails.back().end(), rails.front().begin() + 1, rails.front().end());
        rails.erase(rails.begin());
    }

    /// Nodes of a row from column to column. In a fan a row has the more of them the further it is from the apex, so
    /// that its pieces are as long as those of the rail.
    std::vector<int> row_between(std::size_t a, std::size_t b, int j) {
        const int from = nodes_[a][at(j)];
        const int to = nodes_[b][at(j)];
        std::vector<int> row{from};
        const int pieces = (columns_[a].pieces * j + rows_ - 1) / rows_;
        for (int p = 1; p < pieces; ++p) {
            const double s = double(p) / pieces;
            Place place;
            for (std::size_t d = 0; d < 3; ++d)
                place[d] = (1 - s) * cover_.mesh.nodes[at(from)][d] + s * cover_.mesh.nodes[at(to)][d];
            row.push_back(add_node(place, -1, j == rows_, j == rows_));
        }
        row.push_back(to);
        return row;
    }

    /// Triangles between a row and the one below it, which has as many pieces or more; those of port are laid from the
    /// other end.
    void fill_row(std::vector<int> above, std::vector<int> below, bool starboard) {
        if (!starboard) {
            std::ranges::reverse(above);
            std::ranges::reverse(below);
        }
        const auto add = [&](int a, int b, int c) {
            starboard ? cover_.mesh.triangles.push_back({a, b, c}) : cover_.mesh.triangles.push_back({b, a, c});
        };
        std::size_t i = 0, k = 0;
        while (i + 1 < above.size() || k + 1 < below.size()) {
            // Whichever piece has its middle first comes next.
            if (k + 1 < below.size() && (2 * k + 1) * (above.size() - 1) <= (2 * i + 1) * (below.size() - 1)) {
                add(above[i], below[k], below[k + 1]);
                ++k;
            } else {
                add(above[i], below[k], above[i + 1]);
                ++i;
            }
        }
    }

    const Plan& plan_;
    const Layout& layout_;
    int rows_;
    CoverMesh cover_;
    std::vector<int> stations_;  ///< those that have columns
    std::vector<int> apex_;      ///< film node of each station, or -1
    std::vector<Column> columns_;
    std::vector<std::vector<int>> nodes_;  ///< of each column, from ridge to rail
};

}  // namespace

CoverMesh mesh_cover(const Plan& plan, const Layout& layout, int rows) {
    if (rows < 2 || rows > 200) {
        throw InputError("film.mesh.rows", "/rows", std::to_string(rows), "give 2 to 200 rows of triangles");
    }
    return Mesher(plan, layout, rows).build();
}

}  // namespace coverframe
