// SPDX-License-Identifier: BSD-3-Clause
#include "strap_run.hpp"

#include <cmath>
#include <map>

#include "coverframe/base/error.hpp"
#include "frame/number_text.hpp"

namespace coverframe {

void require_runs(const Frame& frame, const std::vector<StrapRun>& runs, bool tensions_count) {
    std::vector<Problem> problems;
    std::map<int, std::size_t> run_of;
    for (std::size_t r = 0; r < runs.size(); ++r) {
        const StrapRun& run = runs[r];
        const std::string where = "/runs/" + std::to_string(r);
        if (!made_of_straps(frame, run)) {
            problems.push_back({"frame.run", where + "/members", run.name,
                                "strap " + run.name + " must be made of members that are straps"});
            continue;
        }
        for (std::size_t i = 0; i < run.members.size(); ++i) {
            const auto [other, first] = run_of.emplace(run.members[i], r);
            if (first) continue;
            const std::string& member = frame.members[static_cast<std::size_t>(run.members[i])].name;
            problems.push_back({"frame.run.shared", where + "/members/" + std::to_string(i), member,
                                "member " + member + " of strap " + run.name + " is in strap " +
                                    runs[other->second].name + " already; it cannot be set twice"});
        }
        if (!tensions_count || (std::isfinite(run.tension) && run.tension >= 0)) continue;
        if (std::isfinite(run.tension)) {
            problems.push_back({"frame.strap.push", where + "/tension", text_of(run.tension),
                                "strap " + run.name + " would have to push; set it to a tension of zero or more"});
        } else {
            problems.push_back({"frame.run", where + "/tension", text_of(run.tension),
                                "the tension of strap " + run.name + " must be a finite number"});
        }
    }
    if (!problems.empty()) throw InputError(std::move(problems));
}

}  // namespace coverframe
