// SPDX-License-Identifier: BSD-3-Clause
#include "model.hpp"

namespace coverframe::validation {

const std::map<std::string, Model>& models() {
    static const std::map<std::string, Model> all = [] {
        std::map<std::string, Model> map;
        add_rule_models(map);
        add_extremes_models(map);
        add_timber_models(map);
        add_frame_models(map);
        add_strip_models(map);
        add_cover_models(map);
        add_membrane_models(map);
        add_wrinkle_models(map);
        add_film_on_strap_models(map);
        return map;
    }();
    return all;
}

}  // namespace coverframe::validation
