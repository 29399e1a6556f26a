// SPDX-License-Identifier: BSD-3-Clause
// Members of a frame that a test builds by hand.
#pragma once

#include <string>

#include "coverframe/frame/frame.hpp"

namespace coverframe::built {

/// A member without stress in the drawn place, between nodes that are there already.
inline FrameMember member(const Frame& f, const std::string& name, MemberKind kind, int from, int to, double EA) {
    FrameMember m;
    m.name = name;
    m.kind = kind;
    m.from = from;
    m.to = to;
    m.axial_stiffness = EA;
    m.free_length = drawn_length(f, m);
    return m;
}

/// The same, put into the frame.
inline void join(Frame& f, const std::string& name, MemberKind kind, int from, int to, double EA) {
    f.members.push_back(member(f, name, kind, from, to, EA));
}

}  // namespace coverframe::built
