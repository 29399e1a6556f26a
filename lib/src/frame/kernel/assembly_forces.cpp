// SPDX-License-Identifier: BSD-3-Clause
// What the members carry in a state, as results.
#include <Eigen/Dense>
#include <utility>

#include "assembly.hpp"

namespace coverframe::kernel {

using Eigen::Vector3d;

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

}  // namespace

MemberForces Assembly::tie_forces(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads) const {
    MemberForces f;
    const Part& part = parts_[m];
    const TieState<double> a = tie_state(m, u, loads);
    f.axial = a.force;
    f.active = a.stiffness > 0;
    if (loads.member_load.empty()) return f;
    const double* q = loads.member_load.data() + 3 * m;
    f.load[0] = part.drawn_length * dot(a.direction, Vec<double>{q[0], q[1], q[2]});
    if (const std::optional<Catenary> hung = hung_strap(m, a, loads)) {
        f.axial = 0.5 * (hung->tension_from + hung->tension_to);
        f.load[0] = hung->tension_from - hung->tension_to;
        f.least = hung->least;
        f.sag = hung->sag;
        f.active = true;
    }
    return f;
}

MemberForces Assembly::pole_forces(std::size_t m, PoleForces own, const Eigen::VectorXd& u,
                                   const FrameLoads& loads) const {
    MemberForces f;
    const Part& part = parts_[m];
    const FrameMember& member = frame_->members[m];
    if (!loads.member_load.empty()) {
        const Vector3d q(loads.member_load.data() + 3 * m);
        Vector3d::Map(f.load.data()) = part.pole_load->add(q, ends(part, u), own);
    }
    f.axial = own.axial - member.axial_stiffness * warmth(m, loads);
    f.moment_vertical_from = own.moment_2[0];
    f.moment_vertical_to = -own.moment_2[1];
    f.moment_level_from = own.moment_3[0];
    f.moment_level_to = -own.moment_3[1];
    f.shear_vertical = (f.moment_vertical_to - f.moment_vertical_from) / own.length;
    f.shear_level = (f.moment_level_to - f.moment_level_from) / own.length;
    f.twist = own.twist;
    return f;
}

MemberForces Assembly::forces(std::size_t m, const Eigen::VectorXd& u, const FrameLoads& loads) const {
    const Part& part = parts_[m];
    return part.pole ? pole_forces(m, part.pole->forces(ends(part, u)), u, loads) : tie_forces(m, u, loads);
}

void Assembly::forces(const Eigen::VectorXd& u, const FrameLoads& loads, std::vector<Turned<double>>& turns,
                      std::vector<MemberForces>& forces, std::vector<double>& bends) const {
    turns.resize(frame_->nodes.size());
    for (const int node : turning_) turns[index(node)] = turned(vec_at<double>(u.data(), 6 * node + 3));
    forces.clear();
    forces.reserve(parts_.size());
    bends.assign(parts_.size(), 0.0);
    for (std::size_t m = 0; m < parts_.size(); ++m) {
        const Part& part = parts_[m];
        if (!part.pole) {
            forces.push_back(tie_forces(m, u, loads));
            continue;
        }
        const PoleForces own =
            part.arms ? part.pole->forces(ends(part, u))
                      : part.pole->forces(vec_at<double>(u.data(), part.to) - vec_at<double>(u.data(), part.from),
                                          turns[index(part.from / 6)], turns[index(part.to / 6)]);
        forces.push_back(pole_forces(m, own, u, loads));
        bends[m] = own.bend;
    }
}

double Assembly::bend(std::size_t m, const Eigen::VectorXd& u) const {
    return parts_[m].pole ? parts_[m].pole->forces(ends(parts_[m], u)).bend : 0;
}

}  // namespace coverframe::kernel
