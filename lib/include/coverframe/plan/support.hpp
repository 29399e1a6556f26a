// SPDX-License-Identifier: BSD-3-Clause
// What holds the film up: ridge, uprights, cross straps; and what holds it down: the perimeter band.
//
// Two ways to describe the structure: as the yard builds it (RidgeSupport), or as somebody found it, node by node and
// member by member (FoundFrame). Both are laid out into the same frame.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "coverframe/base/cited.hpp"
#include "coverframe/plan/boat.hpp"
#include "coverframe/units/quantities.hpp"

namespace coverframe {

/// Rectangular section. For a ridge, `depth` is vertical and `breadth` horizontal.
struct Section {
    Length breadth{};
    Length depth{};

    bool operator==(const Section&) const = default;
};

/// A kind of strap. The stiffness of woven straps is known to a factor of ten only, so two bounds are carried through.
struct StrapKind {
    std::string name;
    Cited<Force> stiffness_low;        ///< EA, lower bound [N]
    Cited<Force> stiffness_high;       ///< EA, upper bound [N]
    Cited<Force> break_strength;       ///< [N], catalogue or test
    Cited<double> buckle_efficiency;   ///< share of the break strength the buckle holds [-], 0 to 1
    Cited<double> ageing;              ///< share left after sun and wear [-], 0 to 1
    Cited<double> working_share;       ///< share that may be used for months [-], 0 to 1

    bool operator==(const StrapKind&) const = default;
};

/// How an end of the ridge is held by the boat.
enum class Hold {
    pinned,   ///< "pinned": cannot move, may turn
    sliding,  ///< "sliding": may move fore and aft only
    free,     ///< "free": held by nothing but the ridge itself; an upright has to stand near
};

struct RidgeEnd {
    Length x{};
    Length z{};
    Hold hold = Hold::pinned;

    bool operator==(const RidgeEnd&) const = default;
};

/// A timber pole laid over the upright tops.
struct PoleRidge {
    Section section;
    std::string grade;  ///< a name of plan/timber.hpp

    bool operator==(const PoleRidge&) const = default;
};

/// A strap pulled tight over the upright tops.
struct StrapRidge {
    std::string strap;     ///< name of a StrapKind
    Force pretension{};    ///< as set with the tensioner, before the film goes on

    bool operator==(const StrapRidge&) const = default;
};

struct Ridge {
    std::variant<PoleRidge, StrapRidge> member;
    RidgeEnd bow;    ///< forward end
    RidgeEnd stern;  ///< after end

    bool operator==(const Ridge&) const = default;
};

struct FootPad {
    Length length{};     ///< fore and aft
    Length breadth{};    ///< athwart
    Length thickness{};

    bool operator==(const FootPad&) const = default;
};

/// What holds a soft foot level, if nothing but friction does.
struct FootFriction {
    Cited<double> low;               ///< least friction that may be there [-]
    Cited<double> high;              ///< greatest
    Cited<LineLoad> side_stiffness;  ///< of pad or sole, level, until the foot slides: force per way it gives

    bool operator==(const FootFriction&) const = default;
};

/// A foot that is not tied to the boat: it stands on a pad or sole that gives, and lifts off (frame/feet.hpp).
struct SoftFoot {
    Cited<LineLoad> stiffness;             ///< of pad or sole, upwards: force per way it gives
    std::optional<Length> gap;             ///< how far it hangs over its pad before anything is loaded
    std::optional<FootFriction> friction;  ///< without it a step or stringer holds the foot level

    bool operator==(const SoftFoot&) const = default;
};

/// An upright on the centreline. It pushes; it cannot pull.
struct Upright {
    std::string name;
    Length x{};
    std::string stands_on;  ///< name of a Stand
    Length top{};           ///< z of the ridge line over it
    Section section;
    std::string grade;
    FootPad pad;
    std::optional<SoftFoot> foot;  ///< without it the foot does not give

    bool operator==(const Upright&) const = default;
};

enum class Sides { both, port, starboard };

/// A strap from rail to rail over the top of an upright.
struct CrossStrap {
    std::string name;
    std::string over;       ///< name of the Upright
    std::string strap;      ///< name of a StrapKind
    Force pretension{};
    Sides sides = Sides::both;

    bool operator==(const CrossStrap&) const = default;
};

struct RidgeSupport {
    Ridge ridge;
    std::vector<Upright> uprights;        ///< from bow to stern
    std::vector<CrossStrap> cross_straps;

    bool operator==(const RidgeSupport&) const = default;
};

struct FoundNode {
    std::string name;
    Point at;
    bool held = false;  ///< held by the boat in all three directions

    bool operator==(const FoundNode&) const = default;
};

enum class FoundKind {
    pole,     ///< carries push, pull and bending
    upright,  ///< pushes only, pinned at both ends
    strap,    ///< pulls only
};

struct FoundMember {
    std::string name;
    FoundKind kind = FoundKind::pole;
    std::string from;                     ///< name of a FoundNode
    std::string to;
    std::optional<Section> section;       ///< poles and uprights
    std::string grade;                    ///< poles and uprights
    std::string strap;                    ///< straps: name of a StrapKind
    std::optional<Force> pretension;      ///< straps
    std::string stands_on;                ///< uprights: name of a Stand; `from` is the foot
    std::optional<FootPad> pad;           ///< uprights
    std::optional<SoftFoot> foot{};       ///< uprights; `from` is then held by it, and no other member ends there

    bool operator==(const FoundMember&) const = default;
};

/// Any support, by nodes and members. The film lies on the poles or straps between the nodes of `ridge_line`.
struct FoundFrame {
    std::vector<FoundNode> nodes;
    std::vector<FoundMember> members;
    std::vector<std::string> ridge_line;  ///< names of FoundNodes on the centreline, from bow to stern

    bool operator==(const FoundFrame&) const = default;
};

/// Short straps that keep the band from sliding down before the film is shrunk.
struct Hangers {
    Length spacing{};

    bool operator==(const Hangers&) const = default;
};

/// A strap under the hull from band to band; it keeps the film from lifting the band.
struct BellyStrap {
    Length x{};
    std::string strap;
    Force pretension{};

    bool operator==(const BellyStrap&) const = default;
};

/// The strap round the hull below the rub rail, under which the film is tucked.
struct Band {
    std::string strap;
    Force pretension{};
    Length below_rail{};                               ///< vertical distance, rail to band
    Hangers hangers;
    std::vector<BellyStrap> belly_straps;
    std::optional<Cited<LineLoad>> rub_rail_hold;      ///< upward pull per length the rub rail takes by itself [N/m]
    std::optional<Length> inset{};                     ///< level distance, rail in to band; straight down without
    std::optional<Cited<double>> rail_friction{};      ///< least friction of film on the rail that can be relied on [-]

    bool operator==(const Band&) const = default;
};

struct Support {
    std::variant<RidgeSupport, FoundFrame> structure;
    Band band;

    bool operator==(const Support&) const = default;
};

}  // namespace coverframe
