// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/typeface.h"

#include <QCoreApplication>
#include <QFile>
#include <QFontDatabase>
#include <QFontMetricsF>
#include <QRawFont>
#include <QRegularExpression>
#include <QTextBoundaryFinder>
#include <QTextLayout>
#include <QVariant>
#include <algorithm>
#include <stdexcept>

#include "forms/print/font_name.h"

// A resource inside a static library is linked only where it is asked for, and outside of any namespace.
// NOLINTNEXTLINE(misc-use-anonymous-namespace): the macro declares a function of the global namespace.
static void take_in_fonts() {
    Q_INIT_RESOURCE(print_fonts);
}

namespace spoilbook::print {
namespace {

void load(const char* file, const std::string& family, const std::string& own_name) {
    QFile resource(QStringLiteral(":/spoilbook/print/") + QString::fromLatin1(file));
    if (!resource.open(QIODevice::ReadOnly)) {
        throw std::runtime_error(std::string("the program was built without its typeface ") + file);
    }
    const QByteArray bytes = resource.readAll();
    const std::string renamed = rename_family(bytes.toStdString(), family, own_name);
    if (QFontDatabase::addApplicationFontFromData(QByteArray::fromStdString(renamed)) < 0) {
        throw std::runtime_error(std::string("the typeface cannot be read: ") + file);
    }
}

// A name of our own: another Open Sans on the machine, or a rule for that name, must not change a printed
// page.
void load_all() {
    take_in_fonts();
    load("regular.ttf", "Open Sans", "SpoilText");
    load("semibold.ttf", "Open Sans", "SpoilText");
    load("mono.ttf", "DejaVu Sans Mono", "SpoilbookDigests");
}

// Qt forgets its fonts with the application, and a process may have one after another: the application
// remembers.
void require_fonts() {
    constexpr const char* mark = "spoilbook_print_fonts";
    QCoreApplication* application = QCoreApplication::instance();
    if (application == nullptr) {
        throw std::logic_error("text is measured before there is a PrintSession");
    }
    if (!application->property(mark).toBool()) {
        load_all();
        application->setProperty(mark, true);
    }
}

bool drops_out(char32_t c) {
    const auto category = QChar::category(c);
    return (category == QChar::Other_Control && c != U'\n') || c == 0x00AD || c == 0xFEFF;
}

bool shows_as_code(char32_t c, const QRawFont& face) {
    const auto category = QChar::category(c);
    return category == QChar::Other_Format || category == QChar::Other_Surrogate ||
           !face.supportsCharacter(c);
}

QTextOption wrapping() {
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setTextDirection(Qt::LeftToRight);
    return option;
}

// The same text, letter for letter, with no break inside a number, between it and its unit, or behind a ±.
QString held_together(QString text) {
    static const QRegularExpression inside(
        QStringLiteral("(?<=\\d) (?=\\d{3}(?!\\d))|(?<=±) |"
                       "(?<=\\d) (?=(?:m³|m²|m|mm|km|nm|t|kg|kn|h|min|s|NTU|FNU|%|°)(?![\\p{L}\\d]))"));
    return text.replace(inside, QStringLiteral("\u00A0"));
}

QString without_trailing_space(QString text) {
    while (!text.isEmpty() && text.back().isSpace()) {
        text.chop(1);
    }
    return text;
}

}  // namespace

QFont font_of(const Type& type) {
    require_fonts();
    QFont font(type.face == Face::mono ? QStringLiteral("SpoilbookDigests") : QStringLiteral("SpoilText"));
    font.setPixelSize(qRound(type.size * units_per_point));
    font.setWeight(type.face == Face::semibold ? QFont::DemiBold : QFont::Normal);
    font.setHintingPreference(QFont::PreferNoHinting);
    // Without a fallback from the machine's fonts, what is printed depends on nothing but the program.
    font.setStyleStrategy(QFont::NoFontMerging);
    // The smallest spacing that Qt knows: with it, "fi" stays two letters, for whoever searches or copies.
    font.setLetterSpacing(QFont::AbsoluteSpacing, 1.0 / 64);
    return font;
}

QString printable(const std::string& utf8) {
    const QString text = QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()))
                             .replace(QStringLiteral("\r\n"), QStringLiteral("\n"))
                             .replace(u'\r', u'\n')
                             .normalized(QString::NormalizationForm_C);
    const QRawFont face = QRawFont::fromFont(font_of(body_type));
    QString shown;
    for (const char32_t c : text.toStdU32String()) {
        if (c == U'\t' || c == 0x2028 || c == 0x2029) {
            shown += u' ';
        } else if (c == U'\n') {
            shown += u'\n';
        } else if (drops_out(c)) {
            continue;
        } else if (shows_as_code(c, face)) {
            shown += QStringLiteral("[U+%1]").arg(static_cast<uint>(c), 4, 16, QLatin1Char('0')).toUpper();
        } else {
            shown += QString::fromUcs4(&c, 1);
        }
    }
    return shown;
}

double width_of(const QString& text, const Type& type) {
    return QFontMetricsF(font_of(type)).horizontalAdvance(text) / units_per_point;
}

double widest_word(const QString& text, const Type& type) {
    const QFontMetricsF metrics(font_of(type));
    QTextBoundaryFinder finder(QTextBoundaryFinder::Line, held_together(text));
    double widest = 0;
    qsizetype from = 0;
    for (qsizetype to = finder.toNextBoundary(); to >= 0; to = finder.toNextBoundary()) {
        widest =
            std::max(widest, metrics.horizontalAdvance(without_trailing_space(text.mid(from, to - from))));
        from = to;
    }
    return widest / units_per_point;
}

std::vector<QString> break_lines(const QString& text, const Type& type, double width) {
    if (!text.contains(u'\n') && width_of(text, type) <= width) {
        return {text};
    }
    std::vector<QString> lines;
    for (const QString& paragraph : text.split(u'\n')) {
        QTextLayout layout(held_together(paragraph), font_of(type));
        layout.setTextOption(wrapping());
        layout.beginLayout();
        bool any = false;
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            // One unit more: a column as wide as its widest text must hold that text.
            line.setLineWidth(width * units_per_point + 1);
            lines.push_back(without_trailing_space(paragraph.mid(line.textStart(), line.textLength())));
            any = true;
        }
        layout.endLayout();
        if (!any) {
            lines.emplace_back();
        }
    }
    return lines;
}

}  // namespace spoilbook::print
