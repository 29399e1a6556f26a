// SPDX-License-Identifier: BSD-3-Clause
#include "conditioning.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "frame/kernel/diagnosis.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

VectorXd signs_of(const VectorXd& v) {
    return v.unaryExpr([](double x) { return x < 0 ? -1.0 : 1.0; });
}

/// What holds a frame, by kind; one number a thing.
struct Holder {
    std::string name;
    double own = 0;
    double held = 0;
    double most = 0;  ///< what moving its nodes as far could store at the most
    double move = 0;  ///< of its nodes, as place_of measures [m]
};

/// So little that it is lost beside anything else, and so much that nothing underflows.
const double hardly = std::ldexp(1.0, -200);

/// Share of own that is nothing in held; rounding leaves 1e-15.
constexpr double rounding = 1e-13;

void weaken(FrameMember& m) {
    m.axial_stiffness *= hardly;
    m.bending.EI_vertical *= hardly;
    m.bending.EI_level *= hardly;
    m.bending.GA_vertical *= hardly;
    m.bending.GA_level *= hardly;
    m.bending.GJ *= hardly;
    m.spring_from *= hardly;
    m.spring_to *= hardly;
}

void weaken(NodeSpring& spring) {
    for (double& k : spring.stiffness) k *= hardly;
}

void weaken(Foot& foot) {
    foot.stiffness *= hardly;
    foot.side_stiffness *= hardly;
}

/// A frame in which everything is weak, to be made strong one thing after the other.
class OneByOne {
public:
    OneByOne(const Shape& shape, bool geometric) : shape_(shape), geometric_(geometric), frame_(shape.frame) {
        for (FrameMember& member : frame_.members) weaken(member);
        for (NodeSpring& spring : frame_.springs) weaken(spring);
        for (Foot& foot : frame_.feet) weaken(foot);
        loads_.temperature = shape.loads.temperature;
        if (!shape.loads.member_load.empty()) loads_.member_load.assign(shape.loads.member_load.size(), 0.0);
    }

    std::vector<Holder> all() {
        std::vector<Holder> holders;
        const Frame& given = shape_.frame;
        const auto node_name = [&](int node) { return "\"" + given.nodes[index(node)].name + "\""; };
        for (std::size_t m = 0; m < given.members.size(); ++m) {
            const FrameMember weak = frame_.members[m];
            frame_.members[m] = given.members[m];
            const auto first = static_cast<std::ptrdiff_t>(3 * m);
            if (!loads_.member_load.empty()) {
                std::copy_n(shape_.loads.member_load.begin() + first, 3, loads_.member_load.begin() + first);
            }
            holders.push_back(look("\"" + weak.name + "\"", {weak.from, weak.to}));
            if (!loads_.member_load.empty()) std::fill_n(loads_.member_load.begin() + first, 3, 0.0);
            frame_.members[m] = weak;
        }
        for (std::size_t s = 0; s < given.springs.size(); ++s) {
            const NodeSpring weak = frame_.springs[s];
            frame_.springs[s] = given.springs[s];
            holders.push_back(look("the spring at node " + node_name(weak.node), {weak.node}));
            frame_.springs[s] = weak;
        }
        for (std::size_t f = 0; f < given.feet.size(); ++f) {
            const Foot weak = frame_.feet[f];
            frame_.feet[f] = given.feet[f];
            holders.push_back(look("the foot at node " + node_name(weak.node), {weak.node}));
            frame_.feet[f] = weak;
        }
        for (const FrameLoads::Spring& spring : shape_.loads.springs) {
            loads_.springs = {spring};
            holders.push_back(look("the elastic support of node " + node_name(spring.node), {spring.node}));
            loads_.springs.clear();
        }
        return holders;
    }

private:
    Holder look(std::string name, std::initializer_list<int> nodes) {
        Holder holder{std::move(name)};
        const Assembly alone(frame_);
        if (alone.unknowns() != shape_.assembly.unknowns()) return holder;
        alone.evaluate(shape_.u, loads_, state_, geometric_);
        for (int i = 0; i < alone.unknowns(); ++i) {
            holder.own += std::abs(state_.K(alone.band().diagonal(i))) * shape_.v(i) * shape_.v(i);
        }
        const double held = shape_.v.dot(product(alone.band(), state_.K, shape_.v));
        holder.held = held > rounding * holder.own ? held : 0;
        std::array<double, 2> stiffest{};  // against moves and against turns
        std::array<double, 2> moved{};
        for (const int node : nodes) {
            for (int full = 6 * node; full < 6 * node + 6; ++full) {
                const int unknown = alone.unknown_at(full);
                if (unknown < 0) continue;
                const double v = shape_.v(unknown);
                const std::size_t turn = full % 6 < 3 ? 0 : 1;
                stiffest[turn] = std::max(stiffest[turn], std::abs(state_.K(alone.band().diagonal(unknown))));
                moved[turn] += v * v;
                holder.move = std::max(holder.move, move_of(full, v));
            }
        }
        for (std::size_t turn = 0; turn < 2; ++turn) holder.most += stiffest[turn] * moved[turn];
        return holder;
    }

    const Shape& shape_;
    bool geometric_;
    Frame frame_;
    FrameLoads loads_;
    Assembly::State state_;
};

/// Names with half of the largest value or more, each once: ""a" and "b"".
std::string largest(const std::vector<Holder>& holders, double Holder::*value) {
    constexpr std::size_t most_names = 4;
    double most = 0;
    for (const Holder& holder : holders) most = std::max(most, holder.*value);
    std::vector<std::string> names;
    for (const Holder& holder : holders) {
        if (holder.*value < 0.5 * most || std::ranges::find(names, holder.name) != names.end()) continue;
        names.push_back(holder.name);
    }
    std::string text;
    for (std::size_t i = 0; i < std::min(names.size(), most_names); ++i) {
        const bool last = i + 1 == names.size();
        text += (i == 0 ? "" : last ? " and " : ", ") + names[i];
    }
    return text + (names.size() > most_names ? ", ..." : "");
}

}  // namespace

double condition_of(BandedLDLT& factor, const VectorXd& K, const VectorXd& scale) {
    const Band& band = factor.band();
    const int n = band.size();
    if (n == 0) return 1;
    const VectorXd root = scale.cwiseSqrt();
    const VectorXd over_root = root.cwiseInverse();
    VectorXd columns = VectorXd::Zero(n);
    VectorXd entries(n);
    for (int t = 0; t < n; ++t) {
        const Index below = band.reach(t) - t;
        auto column = entries.head(below + 1);
        column = over_root(t) * K.segment(band.diagonal(t), below + 1).cwiseAbs();
        column = column.cwiseProduct(over_root.segment(t, below + 1));
        columns(t) += column.sum();
        columns.segment(t + 1, below) += column.tail(below);
    }
    const auto inverse = [&](const VectorXd& v) {
        VectorXd solved = v.cwiseProduct(root);
        factor.solve(solved);
        return VectorXd(solved.cwiseProduct(root));
    };
    // The first and the last side at once: four side by side take hardly longer than one.
    BandedLDLT::Sides sides = BandedLDLT::Sides::Zero(n, lanes);
    for (int i = 0; i < n; ++i) {
        sides(i, 0) = root(i) / n;
        sides(i, 1) = (i % 2 == 0 ? 1 : -1) * (1 + (n > 1 ? 1.0 * i / (n - 1) : 0.0)) * root(i);
    }
    factor.solve(sides);
    VectorXd x = VectorXd::Constant(n, 1.0 / n);
    VectorXd y = sides.col(0).cwiseProduct(root);
    VectorXd signs = VectorXd::Zero(n);
    double norm = y.lpNorm<1>();
    for (int climbs = 0; climbs < 5; ++climbs) {
        const VectorXd before = signs;
        signs = signs_of(y);
        if (signs == before) break;         // it would climb to where it is
        const VectorXd z = inverse(signs);  // S is symmetric
        Index best = 0;
        if (z.cwiseAbs().maxCoeff(&best) <= z.dot(x)) break;
        x = VectorXd::Unit(n, best);
        y = inverse(x);
        if (y.lpNorm<1>() <= norm) break;
        norm = y.lpNorm<1>();
    }
    norm = std::max(norm, 2 * sides.col(1).cwiseProduct(root).lpNorm<1>() / (3 * n));
    return std::max(1.0, columns.maxCoeff() * norm);
}

VectorXd softest_shape(BandedLDLT& factor, const VectorXd& scale) {
    constexpr int powers = 30;
    const VectorXd root = scale.cwiseSqrt();
    // Neither even nor alternating, so that it has a part of every shape.
    VectorXd soft = VectorXd::LinSpaced(scale.size(), 1.0, 2.0).array().sin() + 0.3;
    for (int i = 0; i < powers; ++i) {
        soft = soft.cwiseProduct(root).normalized();
        factor.solve(soft);
        soft = soft.cwiseProduct(root);
    }
    return soft.normalized().cwiseQuotient(root);
}

bool strained(const Shape& shape) {
    constexpr double moves = 1e-2;   // of the largest move
    constexpr double noise = 1e-26;  // a shape is known to 1e-15 or so along what is stiff
    double most = 0;
    for (int i = 0; i < shape.assembly.unknowns(); ++i) {
        most = std::max(most, move_of(shape.assembly.full_of(i), shape.v(i)));
    }
    return std::ranges::any_of(OneByOne(shape, false).all(), [&](const Holder& holder) {
        return holder.move > moves * most && holder.held > noise * holder.most;
    });
}

std::string conditioning_text(const Shape& shape, double condition) {
    const int digits = static_cast<int>(16 - std::log10(condition));
    const std::vector<Holder> holders = OneByOne(shape, true).all();
    return "stiffnesses lie so far apart that " +
           (digits < 1    ? "no digit"
            : digits == 1 ? "only the first digit"
                          : "only the first " + std::to_string(digits) + " digits") +
           " can be trusted: " + largest(holders, &Holder::own) + " stiffest, " + largest(holders, &Holder::held) +
           " softest";
}

}  // namespace coverframe::kernel
