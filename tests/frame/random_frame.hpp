// SPDX-License-Identifier: BSD-3-Clause
// Random frames like the supports of covers, the same for a seed on every machine.
#pragma once

#include <Eigen/Dense>
#include <array>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "coverframe/frame/solve.hpp"

namespace coverframe::random_frames {

using Eigen::Vector3d;

inline std::size_t at(int i) { return static_cast<std::size_t>(i); }

class Random {
public:
    explicit Random(unsigned seed) : engine_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
    }
    bool chance(double share) { return between(0, 1) < share; }
    int whole(int low, int high) { return low + static_cast<int>(between(0, high - low + 1)); }

private:
    std::mt19937 engine_;
};

struct Example {
    Frame frame;
    FrameLoads loads;
    std::vector<int> loose;  ///< nodes that are free in space
};

inline int add_node(Example& e, const Vector3d& place, bool held) {
    FrameNode node;
    node.name = "n" + std::to_string(e.frame.nodes.size());
    node.at = {place.x(), place.y(), place.z()};
    if (held) node.held = {true, true, true, false, false, false};
    e.frame.nodes.push_back(node);
    e.loads.force.resize(3 * e.frame.nodes.size(), 0.0);
    if (!held) e.loose.push_back(static_cast<int>(e.frame.nodes.size()) - 1);
    return static_cast<int>(e.frame.nodes.size()) - 1;
}

inline FrameMember& add_member(Example& e, MemberKind kind, int from, int to, double EA, double tension) {
    FrameMember member;
    member.name = "m" + std::to_string(e.frame.members.size());
    member.kind = kind;
    member.from = from;
    member.to = to;
    member.axial_stiffness = EA;
    member.free_length = drawn_length(e.frame, member) / (1 + tension / EA);
    e.frame.members.push_back(member);
    return e.frame.members.back();
}

inline void add_strap(Example& e, Random& random, int from, int to) {
    const double EA = random.between(60e3, 200e3);
    add_member(e, MemberKind::strap, from, to, EA, random.between(120, 600));
}

inline void push(Example& e, int node, const Vector3d& force) {
    for (int i = 0; i < 3; ++i) e.loads.force[at(3 * node + i)] += force(i);
}

inline Vector3d place_of(const Frame& frame, int node) { return Vector3d(frame.nodes[at(node)].at.data()); }

struct Kind {
    bool poles = true;   ///< the ridge may be a pole in its first bays
    bool round = false;  ///< poles equally stiff both ways
    bool slack = true;   ///< loose guys and hinges, loads that lift uprights
    double load = 1;
    bool feet = false;   ///< uprights stand on feet that give and have gaps, held level
    bool rough = false;  ///< and are held level by friction instead
    bool hung = false;   ///< straps carry weight and wind along their length
    bool all_loads = false;  ///< loads along members, couples, warmth, settlements, splices and springs that give, arms
};

inline void add_pole(Example& e, Random& random, int from, int to, const Kind& kind, bool hinged) {
    const Vector3d middle = 0.5 * (place_of(e.frame, from) + place_of(e.frame, to));
    const int between = add_node(e, middle, false);
    const double EI = random.between(5e3, 40e3);
    const double level = kind.round ? EI : random.between(0.3, 1.0) * EI;
    const double GA = random.chance(0.5) ? random.between(3e5, 2e6) : 0.0;
    for (const auto& [a, b] : {std::pair{from, between}, std::pair{between, to}}) {
        FrameMember& pole = add_member(e, MemberKind::pole, a, b, random.between(5e6, 30e6), 0);
        pole.bending = {EI, level, GA, kind.round ? GA : 0.8 * GA, 0.1 * EI};
        if (hinged && a == from) pole.spring_from = 0;
    }
    push(e, between, kind.load * Vector3d{0, random.between(-20, 20), random.between(-150, 30)});
}

inline void add_foot(Example& e, Random& random, int node, bool rough) {
    e.frame.nodes[at(node)].held = {!rough, !rough, false, false, false, false};
    Foot foot;
    foot.node = node;
    foot.stiffness = random.between(1e5, 3e6);
    foot.gap = random.chance(0.5) ? 0 : random.between(0, 0.01);
    if (rough) foot.friction = random.between(0.01, 0.3);
    if (rough) foot.side_stiffness = random.between(1e5, 1e6);
    e.frame.feet.push_back(foot);
    e.loose.push_back(node);
}

/// Weight, and wind athwart, on every strap.
inline void load_straps(Example& e, Random& random, const Kind& kind) {
    e.loads.member_load.assign(3 * e.frame.members.size(), 0.0);
    for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
        if (e.frame.members[m].kind != MemberKind::strap) continue;
        e.loads.member_load[3 * m + 1] = kind.load * random.between(-20, 20);
        e.loads.member_load[3 * m + 2] = kind.load * random.between(-120, 5);
    }
}

/// One to three uprights with straps to both rails, a ridge of pole or strap from bow to stern over their tops.
inline Example support(Random& random, const Kind& kind) {
    Example e;
    const int uprights = random.whole(1, 3);
    const int pole_bays = kind.poles ? random.whole(0, uprights + 1) : 0;
    double x = 0;
    int last = add_node(e, {0, 0, random.between(0.6, 1.1)}, true);
    if (pole_bays > 0) e.frame.nodes[0].held = {true, true, true, true, true, true};
    for (int i = 0; i <= uprights; ++i) {
        x += random.between(1.2, 2.0);
        const bool end = i == uprights;
        const Vector3d here{x, end ? 0 : random.between(-0.03, 0.03), random.between(0.9, end ? 1.1 : 1.5)};
        const int top = add_node(e, here, end);
        if (i < pole_bays) {
            add_pole(e, random, last, top, kind, kind.slack && i > 0 && random.chance(0.5));
        } else {
            add_strap(e, random, last, top);
        }
        last = top;
        if (end) break;
        const int foot = add_node(e, {x + random.between(-0.1, 0.1), random.between(-0.05, 0.05), 0}, true);
        add_member(e, MemberKind::upright, foot, top, random.between(2e6, 20e6), 0);
        if (kind.feet) add_foot(e, random, foot, kind.rough);
        for (const double side : {-1.0, 1.0}) {
            const Vector3d rail{x + random.between(-0.3, 0.3), side * random.between(1.0, 1.5),
                                random.between(0.3, 0.7)};
            const int eye = add_node(e, rail, true);
            add_strap(e, random, top, eye);
        }
        if (kind.slack && random.chance(0.3)) {
            const int eye = add_node(e, {x + 0.8, random.between(-1.2, 1.2), 0.4}, true);
            add_member(e, MemberKind::strap, top, eye, 80e3, 0).free_length += random.between(0.0, 0.02);
        }
        const double up = kind.slack ? 500 : -100;
        push(e, top,
             kind.load * Vector3d{random.between(-40, 40), random.between(-200, 200), random.between(-900, up)});
    }
    return e;
}

/// Net of two by two inner nodes, not flat, fixed all round.
inline Example net(Random& random, const Kind& kind) {
    Example e;
    std::array<std::array<int, 4>, 4> node{};
    for (int i = 0; i < 4; ++i) {
        for (int j = 0; j < 4; ++j) {
            const bool edge = i == 0 || i == 3 || j == 0 || j == 3;
            if ((i == 0 || i == 3) && (j == 0 || j == 3)) continue;
            node[at(i)][at(j)] = add_node(e, {0.9 * i, 0.6 * j, random.between(-0.1, 0.1)}, edge);
            if (!edge)
                push(e, node[at(i)][at(j)],
                     kind.load * Vector3d{random.between(-30, 30), random.between(-30, 30), random.between(-250, 150)});
        }
    }
    for (int k = 1; k <= 2; ++k) {
        for (int i = 0; i < 3; ++i) {
            add_strap(e, random, node[at(i)][at(k)], node[at(i + 1)][at(k)]);
            add_strap(e, random, node[at(k)][at(i)], node[at(k)][at(i + 1)]);
        }
    }
    return e;
}

inline Vector3d any(Random& random, double size) {
    return size * Vector3d{random.between(-1, 1), random.between(-1, 1), random.between(-1, 1)};
}

inline void put(std::vector<double>& list, std::size_t first, const Vector3d& values) {
    for (int i = 0; i < 3; ++i) list[first + at(i)] = values(i);
}

/// Everything else that may act, on a frame that stands. Of small size, so that it still stands.
inline void add_all_loads(Example& e, Random& random, const Kind& kind) {
    const std::size_t nodes = e.frame.nodes.size();
    FrameLoads& loads = e.loads;
    loads.couple.resize(3 * nodes, 0.0);
    loads.member_load.resize(3 * e.frame.members.size(), 0.0);
    loads.settlement.resize(6 * nodes, 0.0);
    for (std::size_t m = 0; m < e.frame.members.size(); ++m) {
        FrameMember& member = e.frame.members[m];
        member.expansion = random.between(0.5e-5, 3e-5);
        loads.temperature.push_back(kind.load * random.between(-15, 15));
        if (member.kind == MemberKind::strap) continue;
        put(loads.member_load, 3 * m, kind.load * (any(random, 20) - Vector3d{0, 0, 60}));
        if (member.kind != MemberKind::pole) continue;
        if (random.chance(0.3) && member.spring_from > 0) member.spring_from = random.between(4e3, 4e4);
        if (random.chance(0.3)) member.spring_to = random.between(4e3, 4e4);
        put(loads.couple, 3 * at(member.from), kind.load * any(random, 8));
        const Vector3d arm = any(random, 0.04);
        if (random.chance(0.3)) member.arm_to = {arm.x(), arm.y(), arm.z()};
        if (random.chance(0.3)) {
            const double k = random.between(100, 3000);
            const double c = random.between(10, 300);
            NodeSpring spring{member.to, {k, k, k, c, c, c}};
            for (std::size_t d = 0; d < 6; ++d) {
                if (e.frame.nodes[at(member.to)].held[d]) spring.stiffness[d] = 0;
            }
            e.frame.springs.push_back(spring);
        }
        member.free_length = drawn_length(e.frame, member);
    }
    for (std::size_t n = 0; n < nodes; ++n) {
        if (e.frame.nodes[n].held[0]) put(loads.settlement, 6 * n, kind.load * any(random, 3e-4));
        if (e.frame.nodes[n].held[3]) put(loads.settlement, 6 * n + 3, kind.load * any(random, 1e-3));
    }
}

inline Example example(unsigned seed, const Kind& kind = {}) {
    Random random(seed);
    Example e = random.chance(0.2) ? net(random, kind) : support(random, kind);
    if (kind.hung) load_straps(e, random, kind);
    if (kind.all_loads) add_all_loads(e, random, kind);
    return e;
}

}  // namespace coverframe::random_frames
