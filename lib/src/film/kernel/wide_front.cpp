// SPDX-License-Identifier: BSD-3-Clause
// The same as dense_front.cpp for machines with AVX2 and fused operations; lib/CMakeLists.txt compiles this file for
// them. Eigen has another name here, so that the linker cannot give what is compiled for these machines to others.
#define Eigen EigenWide
#include "film/kernel/dense_front_work.hpp"

namespace coverframe::kernel {

FrontPivots eliminate_wide_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest);

FrontPivots eliminate_wide_front(double* columns, std::ptrdiff_t height, std::ptrdiff_t own, double* rest) {
    return work_on_front(columns, height, own, rest);
}

}  // namespace coverframe::kernel
