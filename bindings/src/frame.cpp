// SPDX-License-Identifier: BSD-3-Clause
// Any frame, from arrays and back to arrays. The interpreter lock is released while frames are solved.
#include <algorithm>
#include <limits>

#include "arrays.hpp"
#include "coverframe/frame/batch.hpp"
#include "coverframe/frame/buckling.hpp"
#include "coverframe/frame/imperfection.hpp"
#include "coverframe/frame/pretension.hpp"
#include "coverframe/frame/solve.hpp"
#include "coverframe/frame/tightening.hpp"

namespace coverframe::binding {
namespace {

using Names = std::vector<std::string>;
using Whole = py::array_t<std::int64_t, py::array::c_style | py::array::forcecast>;
using Truths = py::array_t<bool, py::array::c_style | py::array::forcecast>;

/// A frame as Python holds it: node names, places (n by 3), held (n by 6), member names, ends (m by 2), kinds (m:
/// 0 pole, 1 upright, 2 strap, 3 bar), numbers (m by 17: EA, L0, weight, EI vertical, EI level, GA vertical, GA level,
/// GJ, springs of both ends, expansion, arms of both ends), node of each foot (f), its numbers (f by 4: stiffness, gap,
/// friction, sideways stiffness), nodes of springs (s), their stiffnesses (s by 6).
using FrameArrays = std::tuple<Names, Numbers, Truths, Names, Whole, Whole, Numbers, Whole, Numbers, Whole, Numbers>;
/// For each case: forces (n by 3), couples (n by 3), loads of members (m by 3), warmth (m), settlements (n by 6). Those
/// after the forces may be empty.
using LoadArrays = std::tuple<Numbers, Numbers, Numbers, Numbers, Numbers>;
/// Node (s), stiffness (s by 9), u0 (s by 3) and force0 (s by 3) of the springs.
using SpringArrays = std::tuple<Whole, Numbers, Numbers, Numbers>;
/// Greatest number of steps, force tolerance, rotation limit.
using Options = std::tuple<int, double, double>;

bool has_size(const py::array& array, std::size_t size) { return static_cast<std::size_t>(array.size()) == size; }

/// An index as the library has it; one that is far off is -1, which no node has.
int index_of(std::int64_t index) {
    return index < 0 || index > std::numeric_limits<int>::max() ? -1 : static_cast<int>(index);
}

template <std::size_t count>
std::array<double, count> row_of(const Numbers& rows, std::size_t row) {
    std::array<double, count> values{};
    std::copy_n(rows.data() + count * row, count, values.begin());
    return values;
}

FrameMember member_of(const FrameArrays& arrays, std::size_t m) {
    const std::array<double, 17> row = row_of<17>(std::get<6>(arrays), m);
    FrameMember member;
    member.name = std::get<3>(arrays)[m];
    member.kind = static_cast<MemberKind>(std::get<5>(arrays).data()[m]);
    member.from = index_of(std::get<4>(arrays).data()[2 * m]);
    member.to = index_of(std::get<4>(arrays).data()[2 * m + 1]);
    member.axial_stiffness = row[0];
    member.free_length = row[1];
    member.weight = row[2];
    member.bending = {row[3], row[4], row[5], row[6], row[7]};
    member.spring_from = row[8];
    member.spring_to = row[9];
    member.expansion = row[10];
    member.arm_from = {row[11], row[12], row[13]};
    member.arm_to = {row[14], row[15], row[16]};
    return member;
}

Frame frame_of(const FrameArrays& arrays) {
    const std::size_t nodes = std::get<0>(arrays).size();
    const std::size_t members = std::get<3>(arrays).size();
    const auto springs = static_cast<std::size_t>(std::get<9>(arrays).size());
    expect(has_size(std::get<1>(arrays), 3 * nodes) && has_size(std::get<2>(arrays), 6 * nodes), "sizes of the nodes");
    expect(has_size(std::get<4>(arrays), 2 * members) && has_size(std::get<5>(arrays), members) &&
               has_size(std::get<6>(arrays), 17 * members),
           "sizes of the members");
    expect(has_size(std::get<10>(arrays), 6 * springs), "sizes of the springs");
    const std::int64_t* kinds = std::get<5>(arrays).data();
    expect(std::all_of(kinds, kinds + members, [](std::int64_t kind) { return kind >= 0 && kind <= 3; }), "kinds");
    Frame frame;
    frame.nodes.resize(nodes);
    for (std::size_t n = 0; n < nodes; ++n) {
        frame.nodes[n].name = std::get<0>(arrays)[n];
        frame.nodes[n].at = row_of<3>(std::get<1>(arrays), n);
        std::copy_n(std::get<2>(arrays).data() + 6 * n, 6, frame.nodes[n].held.begin());
    }
    for (std::size_t m = 0; m < members; ++m) frame.members.push_back(member_of(arrays, m));
    const auto feet = static_cast<std::size_t>(std::get<7>(arrays).size());
    expect(has_size(std::get<8>(arrays), 4 * feet), "sizes of the feet");
    for (std::size_t f = 0; f < feet; ++f) {
        const auto [stiffness, gap, friction, side] = row_of<4>(std::get<8>(arrays), f);
        frame.feet.push_back({index_of(std::get<7>(arrays).data()[f]), stiffness, gap, friction, side});
    }
    for (std::size_t s = 0; s < springs; ++s) {
        frame.springs.push_back({index_of(std::get<9>(arrays).data()[s]), row_of<6>(std::get<10>(arrays), s)});
    }
    return frame;
}

/// The rows of one case out of `cases` that lie in `all`; nothing if there are none.
std::vector<double> part_of(const Numbers& all, std::size_t cases, std::size_t each, std::size_t k) {
    if (all.size() == 0) return {};
    expect(has_size(all, cases * each), "sizes of the loads");
    return {all.data() + each * k, all.data() + each * (k + 1)};
}

/// One set of loads for each of the `cases`; every case has the springs.
std::vector<FrameLoads> loads_of(const LoadArrays& given, std::size_t cases, const Frame& frame,
                                 const SpringArrays& arrays) {
    const std::size_t nodes = frame.nodes.size();
    const std::size_t members = frame.members.size();
    const std::size_t springs = static_cast<std::size_t>(std::get<0>(arrays).size());
    expect(has_size(std::get<1>(arrays), 9 * springs) && has_size(std::get<2>(arrays), 3 * springs) &&
               has_size(std::get<3>(arrays), 3 * springs),
           "sizes of the springs");
    std::vector<FrameLoads> loads(cases);
    for (std::size_t k = 0; k < cases; ++k) {
        loads[k].force = part_of(std::get<0>(given), cases, 3 * nodes, k);
        loads[k].couple = part_of(std::get<1>(given), cases, 3 * nodes, k);
        loads[k].member_load = part_of(std::get<2>(given), cases, 3 * members, k);
        loads[k].temperature = part_of(std::get<3>(given), cases, members, k);
        loads[k].settlement = part_of(std::get<4>(given), cases, 6 * nodes, k);
        for (std::size_t s = 0; s < springs; ++s) {
            loads[k].springs.push_back({.node = index_of(std::get<0>(arrays).data()[s]),
                                        .stiffness = row_of<9>(std::get<1>(arrays), s),
                                        .u0 = row_of<3>(std::get<2>(arrays), s),
                                        .force0 = row_of<3>(std::get<3>(arrays), s)});
        }
    }
    return loads;
}

SolveOptions options_of(const Options& options) {
    return {.max_iterations = std::get<0>(options),
            .force_tolerance = std::get<1>(options),
            .rotation_limit = std::get<2>(options)};
}

constexpr std::size_t member_numbers = 14;

/// Axial, the four moments, the two shears, twist, the member load along three axes, least tension and sag of a loaded
/// strap, active (0 or 1).
void write_members(const Solution& solution, double* to) {
    for (const MemberForces& f : solution.members) {
        for (const double value : {f.axial, f.moment_vertical_from, f.moment_vertical_to, f.moment_level_from,
                                   f.moment_level_to, f.shear_vertical, f.shear_level, f.twist, f.load[0], f.load[1],
                                   f.load[2], f.least, f.sag, f.active ? 1.0 : 0.0}) {
            *to++ = value;
        }
    }
}

/// Five numbers a foot: push, sideways along x and y, slip, whether it carries (0 or 1).
void write_feet(const Solution& solution, double* to) {
    for (const FootForces& f : solution.feet) {
        for (const double value : {f.push, f.side[0], f.side[1], f.slip, f.carries ? 1.0 : 0.0}) *to++ = value;
    }
}

constexpr std::size_t state_numbers = 20;

/// Share of the loads, condition, unbalanced force and moment, strain energy, potential of the loads, their sum; force
/// and moment of the loads, force and moment of the boat; steps to the loads.
void write_state(const Solution& s, double* to) {
    for (const double value : {s.load_share, s.condition, s.unbalanced, s.unbalanced_moment, s.strain_energy,
                               s.load_potential, s.energy}) {
        *to++ = value;
    }
    for (const std::array<double, 3>& sum : {s.balance.load_force, s.balance.load_moment, s.balance.reaction_force,
                                             s.balance.reaction_moment}) {
        to = std::copy(sum.begin(), sum.end(), to);
    }
    *to = s.load_steps;
}

/// Status, message, caution, displacements (k by n by 6), members (k by m by 14), reactions (k by n by 6), numbers of
/// the state (k by 20), iterations (k), feet (k by f by 5), nodes that hang loose (k by n).
py::tuple arrays_of(const std::vector<Solution>& solutions, const Frame& frame) {
    const std::size_t nodes = frame.nodes.size();
    const std::size_t members = frame.members.size();
    const std::size_t count = frame.feet.size();
    const auto cases = static_cast<py::ssize_t>(solutions.size());
    const auto n = static_cast<py::ssize_t>(nodes);
    const auto m = static_cast<py::ssize_t>(members);
    py::array_t<double> displacement(Shape{cases, n, 6});
    py::array_t<double> forces(Shape{cases, m, static_cast<py::ssize_t>(member_numbers)});
    py::array_t<double> reaction(Shape{cases, n, 6});
    py::array_t<double> feet(Shape{cases, static_cast<py::ssize_t>(count), 5});
    py::array_t<bool> loose(Shape{cases, n});
    std::fill_n(loose.mutable_data(), loose.size(), false);
    py::array_t<double> state(Shape{cases, static_cast<py::ssize_t>(state_numbers)});
    py::array_t<std::int64_t> iterations(cases);
    for (std::size_t k = 0; k < solutions.size(); ++k) {
        std::copy_n(solutions[k].displacement.begin(), 6 * nodes, displacement.mutable_data() + 6 * nodes * k);
        std::copy_n(solutions[k].reaction.begin(), 6 * nodes, reaction.mutable_data() + 6 * nodes * k);
        write_members(solutions[k], forces.mutable_data() + member_numbers * members * k);
        write_state(solutions[k], state.mutable_data() + state_numbers * k);
        write_feet(solutions[k], feet.mutable_data() + 5 * count * k);
        for (const int node : solutions[k].loose)
            loose.mutable_data()[nodes * k + static_cast<std::size_t>(node)] = true;
        iterations.mutable_data()[k] = solutions[k].iterations;
    }
    return py::make_tuple(texts(solutions, [](const Solution& s) { return name_of(s.status); }),
                          texts(solutions, [](const Solution& s) { return s.message; }),
                          texts(solutions, [](const Solution& s) { return s.caution; }), displacement, forces, reaction,
                          state, iterations, feet, loose);
}

py::tuple solve_all(const FrameArrays& arrays, const LoadArrays& given, std::size_t cases, const SpringArrays& springs,
                    const Options& options, const Numbers& start, std::size_t threads) {
    const Frame frame = frame_of(arrays);
    const std::vector<FrameLoads> loads = loads_of(given, cases, frame, springs);
    const std::vector<double> from(start.data(), start.data() + start.size());
    const SolveOptions chosen = options_of(options);
    std::vector<Solution> solutions;
    {
        const py::gil_scoped_release unlocked;
        if (cases == 1) {
            solutions.push_back(solve(frame, loads.front(), chosen, from));
        } else {
            solutions = solve_batch(frame, loads, chosen, from, static_cast<int>(threads));
        }
    }
    return arrays_of(solutions, frame);
}

py::array_t<double> free_lengths(const Frame& frame) {
    return numbers(frame.members, [](const FrameMember& m) { return m.free_length; });
}

/// Gives a solution that was never run the sizes of one.
void complete(Solution& solution, const Frame& frame) {
    solution.displacement.resize(6 * frame.nodes.size(), 0.0);
    solution.reaction.resize(6 * frame.nodes.size(), 0.0);
    solution.members.resize(frame.members.size());
    solution.feet.resize(frame.feet.size());
}

/// Name, members and tension of a strap.
using Run = std::tuple<std::string, std::vector<int>, double>;

/// As solve_all for one case, then the free lengths found (m) and the rounds.
py::tuple tension_all(const FrameArrays& arrays, const LoadArrays& given, const SpringArrays& springs,
                      const Options& options, const std::vector<Run>& runs) {
    const Frame frame = frame_of(arrays);
    const FrameLoads loads = loads_of(given, 1, frame, springs).front();
    std::vector<StrapRun> straps;
    for (const auto& [name, members, tension] : runs) straps.push_back({name, members, tension});
    Tensioned tensioned;
    {
        const py::gil_scoped_release unlocked;
        tensioned = tension_straps(frame, straps, loads, options_of(options));
    }
    return py::make_tuple(arrays_of({tensioned.solution}, frame), free_lengths(tensioned.frame), tensioned.rounds);
}

/// Index of a strap, tension and give of a step.
using Step = std::tuple<int, double, double>;

/// As solve_all for one case, then the free lengths (m), the tensions after each step (steps done by runs) and the
/// message.
py::tuple tighten_all(const FrameArrays& arrays, const LoadArrays& given, const SpringArrays& springs,
                      const Options& options, const std::vector<Run>& runs, const std::vector<Step>& steps,
                      const std::vector<int>& held_by_hand, double hand_stiffness) {
    const Frame frame = frame_of(arrays);
    const FrameLoads loads = loads_of(given, 1, frame, springs).front();
    std::vector<StrapRun> straps;
    for (const auto& [name, members, tension] : runs) straps.push_back({name, members, tension});
    std::vector<TighteningStep> pulls;
    for (const auto& [run, tension, give] : steps) pulls.push_back({run, tension, give});
    Tightened tightened;
    {
        const py::gil_scoped_release unlocked;
        tightened = tighten_in_order(frame, straps, pulls, loads, {held_by_hand, hand_stiffness, options_of(options)});
    }
    complete(tightened.solution, frame);
    const auto rows = static_cast<py::ssize_t>(tightened.tensions.size());
    py::array_t<double> tensions(Shape{rows, static_cast<py::ssize_t>(straps.size())});
    double* to = tensions.mutable_data();
    for (const std::vector<double>& row : tightened.tensions) to = std::copy(row.begin(), row.end(), to);
    return py::make_tuple(arrays_of({tightened.solution}, frame), free_lengths(tightened.frame), tensions,
                          tightened.message);
}

/// Name and the two members of a passing.
using Over = std::tuple<std::string, int, int>;

/// As solve_all for one case, then the free lengths (m), first, second, turn and slipped of each passing (p by 4) and
/// the rounds. Without rows if the straps did not come to rest.
py::tuple slip_all(const FrameArrays& arrays, const LoadArrays& given, const SpringArrays& springs,
                   const Options& options, const std::vector<Over>& over, double friction) {
    const Frame frame = frame_of(arrays);
    const FrameLoads loads = loads_of(given, 1, frame, springs).front();
    std::vector<Passing> passings;
    for (const auto& [name, first, second] : over) passings.push_back({name, first, second});
    Slipped slipped;
    {
        const py::gil_scoped_release unlocked;
        slipped = slip_over_tops(frame, passings, friction, loads, options_of(options));
    }
    py::array_t<double> states(Shape{static_cast<py::ssize_t>(slipped.passings.size()), 4});
    double* to = states.mutable_data();
    for (const PassingState& s : slipped.passings) {
        for (const double value : {s.first, s.second, s.turn, s.slipped}) *to++ = value;
    }
    return py::make_tuple(arrays_of({slipped.solution}, frame), free_lengths(slipped.frame), states, slipped.rounds);
}

/// The state of a frame under one set of loads that was found before, from its displacements.
Solution state_of(const Frame& frame, const FrameLoads& loads, const Options& options, const Numbers& displacement) {
    return solve(frame, loads, options_of(options), {displacement.data(), displacement.data() + displacement.size()});
}

/// Factor, shape (n by 6), place, reach, members that let go and that take up of each mode, and why there is none.
/// \param loads_only  the state without the loads is found as well, and its forces do not grow
py::tuple buckle(const FrameArrays& arrays, const LoadArrays& given, const SpringArrays& springs,
                 const Options& options, const Numbers& displacement, int count, bool loads_only) {
    const Frame frame = frame_of(arrays);
    const FrameLoads loads = loads_of(given, 1, frame, springs).front();
    Buckling found;
    {
        const py::gil_scoped_release unlocked;
        const Solution state = state_of(frame, loads, options, displacement);
        const Solution bare = loads_only ? solve(frame, scaled(loads, 0), options_of(options)) : Solution{};
        found = buckling(frame, loads, state, {.count = count, .without_loads = loads_only ? &bare : nullptr});
    }
    py::list modes;
    for (const BucklingMode& mode : found.modes) {
        py::array_t<double> shape(Shape{static_cast<py::ssize_t>(frame.nodes.size()), 6});
        std::copy(mode.shape.begin(), mode.shape.end(), shape.mutable_data());
        modes.append(py::make_tuple(mode.factor, shape, mode.place, mode.reach, mode.lets_go, mode.takes_up));
    }
    return py::make_tuple(modes, found.message);
}

/// Name, push, critical push and share used of every upright that pushes.
py::list uprights_of(const FrameArrays& arrays, const LoadArrays& given, const SpringArrays& springs,
                     const Options& options, const Numbers& displacement) {
    const Frame frame = frame_of(arrays);
    const FrameLoads loads = loads_of(given, 1, frame, springs).front();
    std::vector<UprightStability> all;
    {
        const py::gil_scoped_release unlocked;
        all = upright_stability(frame, loads, state_of(frame, loads, options, displacement));
    }
    py::list rows;
    for (const UprightStability& one : all) rows.append(py::make_tuple(one.name, one.push, one.critical, one.used));
    return rows;
}

/// Places of the nodes (n by 3) and free lengths (m) of a frame that was drawn anew.
py::tuple drawn_anew(const Frame& frame) {
    py::array_t<double> places(Shape{static_cast<py::ssize_t>(frame.nodes.size()), 3});
    double* to = places.mutable_data();
    for (const FrameNode& node : frame.nodes) to = std::copy(node.at.begin(), node.at.end(), to);
    return py::make_tuple(places, free_lengths(frame));
}

void bind_imperfections(py::module_& module) {
    module.def("frame_out_of_plumb",
               [](const FrameArrays& arrays, double level, double angle, const std::array<double, 2>& direction) {
                   return drawn_anew(out_of_plumb(frame_of(arrays), level, angle, direction));
               });
    module.def("frame_leaning",
               [](const FrameArrays& arrays, int member, double angle, const std::array<double, 2>& direction) {
                   return drawn_anew(leaning(frame_of(arrays), member, angle, direction));
               });
    module.def("frame_bowed",
               [](const FrameArrays& arrays, const std::vector<int>& members, double rise,
                  const std::array<double, 3>& direction, bool parabola) {
                   return drawn_anew(bowed(frame_of(arrays), members, rise, direction,
                                           parabola ? BowShape::parabola : BowShape::sine));
               });
    module.def("frame_shaped", [](const FrameArrays& arrays, const Numbers& displacement, double amplitude) {
        return drawn_anew(shaped(frame_of(arrays), {displacement.data(), displacement.data() + displacement.size()},
                                 amplitude));
    });
}

}  // namespace

void bind_frame(py::module_& module) {
    module.def("require_sound_frame", [](const FrameArrays& arrays) { require_sound(frame_of(arrays)); });
    module.def("frame_self_weight", [](const FrameArrays& arrays, double factor) {
        const FrameLoads loads = self_weight(frame_of(arrays), factor);
        return py::array_t<double>(static_cast<py::ssize_t>(loads.force.size()), loads.force.data());
    });
    module.def("solve_frame", &solve_all);
    module.def("tension_frame_straps", &tension_all);
    module.def("tighten_frame_straps", &tighten_all);
    module.def("slip_frame_straps", &slip_all);
    module.def("buckle_frame", &buckle);
    module.def("frame_uprights", &uprights_of);
    bind_imperfections(module);
}

}  // namespace coverframe::binding
