// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/palette.h"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "forms/shared/icon.h"

using namespace spoilbook;
using namespace spoilbook::form;
using Catch::Matchers::WithinAbs;

namespace {

using Rgb = std::array<double, 3>;
using Matrix = std::array<Rgb, 3>;

double linear(double v) {
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

// Machado, Oliveira, Fernandes (2009), "A physiologically-based model for simulation of color vision
// deficiency", severity 1.0. MEM.
constexpr Matrix protan{
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix deutan{
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix tritan{
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

Rgb seen(const QColor& c, const Matrix& m) {
    const Rgb in{linear(c.redF()), linear(c.greenF()), linear(c.blueF())};
    Rgb out{};
    for (std::size_t i = 0; i < 3; ++i) {
        out[i] = std::clamp(m[i][0] * in[0] + m[i][1] * in[1] + m[i][2] * in[2], 0.0, 1.0);
    }
    return out;
}

// CIE 1976 L*a*b* difference under D65; the sRGB matrix of IEC 61966-2-1. MEM.
Rgb lab(const Rgb& c) {
    const double x = (0.4124 * c[0] + 0.3576 * c[1] + 0.1805 * c[2]) / 0.9505;
    const double y = 0.2126 * c[0] + 0.7152 * c[1] + 0.0722 * c[2];
    const double z = (0.0193 * c[0] + 0.1192 * c[1] + 0.9505 * c[2]) / 1.089;
    const auto f = [](double t) { return t > 0.008856 ? std::cbrt(t) : 7.787 * t + 16.0 / 116; };
    return {116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))};
}

double difference(const QColor& a, const QColor& b, const Matrix& eye) {
    const Rgb p = lab(seen(a, eye));
    const Rgb q = lab(seen(b, eye));
    return std::sqrt(std::pow(p[0] - q[0], 2) + std::pow(p[1] - q[1], 2) + std::pow(p[2] - q[2], 2));
}

}  // namespace

TEST_CASE("contrast is worked out as WCAG 2.2 has it", "[palette]") {
    // Black on white is 21 : 1 by definition; #767676 on white is the usual 4.54 : 1. MEM.
    CHECK_THAT(contrast(Qt::black, Qt::white), WithinAbs(21.0, 0.005));
    CHECK_THAT(contrast(QColor(0x76, 0x76, 0x76), Qt::white), WithinAbs(4.54, 0.005));
    CHECK_THAT(contrast(Qt::red, Qt::red), WithinAbs(1.0, 1e-12));
}

TEST_CASE("every text and shape stands out from what lies behind it, by day and by night", "[palette]") {
    for (const Light light : {Light::day, Light::night}) {
        const Palette p = Palette::of(light);
        for (const TonePair& pair : tone_pairs()) {
            INFO("light " << int(light) << ", tone " << int(pair.front) << " on " << int(pair.back));
            CHECK(contrast(p[pair.front], p[pair.back]) >= pair.least);
        }
    }
}

TEST_CASE("the night palette is dim and low in blue", "[palette]") {
    const Palette p = Palette::of(Light::night);
    for (const Tone tone : {Tone::ground, Tone::surface, Tone::raised, Tone::sunk, Tone::selection}) {
        CHECK(p[tone].blue() < p[tone].red());
        CHECK(p[tone].lightness() < 64);
    }
    for (const Tone tone : {Tone::text, Tone::quiet, Tone::accent}) {
        CHECK(p[tone].blue() < p[tone].red() * 3 / 4);
        CHECK(p[tone].lightness() < 200);
    }
}

TEST_CASE("states stay apart for eyes that lack one kind of cone", "[palette]") {
    // A difference of 10 is far above the just noticeable 2.3; shape and word come before colour in any case.
    for (const Light light : {Light::day, Light::night}) {
        const Palette p = Palette::of(light);
        for (const Matrix& eye : {protan, deutan, tritan}) {
            CHECK(difference(p[Tone::ok], p[Tone::attention], eye) > 10);
            CHECK(difference(p[Tone::ok], p[Tone::over], eye) > 10);
            CHECK(difference(p[Tone::attention], p[Tone::over], eye) > 10);
        }
    }
}

TEST_CASE("every icon draws something in the tone that is asked for", "[icon]") {
    const QColor ink(10, 60, 110);
    REQUIRE(icon_names().size() >= 40);
    for (const QString& name : icon_names()) {
        INFO(name.toStdString());
        const QImage picture = icon_picture(name, ink, 24, 2).toImage();
        REQUIRE(picture.size() == QSize(48, 48));
        int inked = 0;
        for (int y = 0; y < 48; ++y) {
            for (int x = 0; x < 48; ++x)
                inked += picture.pixelColor(x, y).alpha() > 200 ? 1 : 0;
        }
        CHECK(inked > 40);
        CHECK_FALSE(icon(name).isNull());
    }
    CHECK(icon(QStringLiteral("no-such-icon")).isNull());
}
