// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/dense_front.hpp"

#include "film/kernel/dense_front_work.hpp"
#include "frame/kernel/numbers.hpp"

namespace coverframe::kernel {

#ifdef COVERFRAME_WIDE_FRONTS
FrontPivots eliminate_wide_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest);

FrontPivots eliminate_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest) {
    static const bool fused = __builtin_cpu_supports("fma");
    return has_avx2() && fused ? eliminate_wide_front(columns, height, own, rest)
                               : work_on_front(columns, height, own, rest);
}
#else
FrontPivots eliminate_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest) {
    return work_on_front(columns, height, own, rest);
}
#endif

}  // namespace coverframe::kernel
