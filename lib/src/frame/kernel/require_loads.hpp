// SPDX-License-Identifier: BSD-3-Clause
// Whether loads fit a frame.
#pragma once

#include "frame/kernel/assembly.hpp"

namespace coverframe::kernel {

/// \throws InputError frame.loads.size, frame.loads.finite, frame.loads.couple,
///   frame.loads.settlement (frame/solve.hpp)
void require_loads(const Frame& frame, const Assembly& assembly, const FrameLoads& loads);

}  // namespace coverframe::kernel
