// SPDX-License-Identifier: GPL-3.0-or-later
// The type scale and the tones of a printed page. Lengths are points (1/72 inch) throughout forms/print.
#pragma once

namespace spoilbook::print {

enum class Face { regular, semibold, mono };

/// ink: text; quiet: labels and notes (contrast 6.6 : 1 on white); hair: fine rules; tint: a ground under
/// text; accent: the one colour; the last three fill marks.
enum class Tone { ink, quiet, hair, tint, accent, met, near, passed };

/// A size with its line distance. `size` and `leading` in points.
struct Type {
    double size = 9;
    double leading = 13;
    Face face = Face::regular;
    Tone tone = Tone::ink;
};

inline constexpr Type title_type{20, 26, Face::semibold, Tone::ink};
inline constexpr Type subtitle_type{11, 15, Face::regular, Tone::quiet};
inline constexpr Type sentence_type{14, 20, Face::semibold, Tone::ink};
inline constexpr Type part_type{14, 19, Face::semibold, Tone::accent};
inline constexpr Type section_type{11, 15, Face::semibold, Tone::ink};
inline constexpr Type strong_type{9, 13, Face::semibold, Tone::ink};
inline constexpr Type body_type{9, 13, Face::regular, Tone::ink};
inline constexpr Type label_type{9, 13, Face::regular, Tone::quiet};
inline constexpr Type small_type{8, 11, Face::regular, Tone::quiet};
inline constexpr Type small_strong_type{8, 11, Face::semibold, Tone::ink};
inline constexpr Type digest_type{8, 12, Face::mono, Tone::ink};

/// From the top of a line's box to its baseline. Open Sans rises 1.069 and falls 0.293 of its size (hhea
/// table).
constexpr double baseline_in_line(const Type& type) {
    return type.leading / 2 + type.size * (1.069 - 0.293) / 2;
}

constexpr Type in_face(Type type, Face face) {
    type.face = face;
    return type;
}

constexpr Type in_tone(Type type, Tone tone) {
    type.tone = tone;
    return type;
}

}  // namespace spoilbook::print
