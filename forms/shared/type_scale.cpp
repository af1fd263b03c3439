// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/type_scale.h"

#include <QFontDatabase>
#include <QStringList>
#include <stdexcept>

// A resource inside a static library is linked only where it is asked for, and outside of any namespace.
static void take_in_typefaces() {
    Q_INIT_RESOURCE(print_fonts);
}

namespace spoilbook::form {
namespace {

QString load_family() {
    take_in_typefaces();
    QString family;
    for (const char* file : {":/spoilbook/print/semibold.ttf", ":/spoilbook/print/regular.ttf"}) {
        const int id = QFontDatabase::addApplicationFont(QString::fromLatin1(file));
        if (id < 0)
            throw std::runtime_error(std::string("the program was built without its typeface ") + file);
        family = QFontDatabase::applicationFontFamilies(id).constFirst();
    }
    return family;
}

int pixels(Step step) {
    switch (step) {
        case Step::small:
            return 12;
        case Step::body:
            return 14;
        case Step::strong:
            return 17;
        case Step::title:
            return 22;
        case Step::figure:
            break;
    }
    return 30;
}

}  // namespace

QFont type_font(Step step, Weight weight) {
    static const QString family = load_family();
    QFont font(family);
    font.setPixelSize(pixels(step));
    font.setWeight(weight == Weight::semibold ? QFont::DemiBold : QFont::Normal);
    return font;
}

}  // namespace spoilbook::form
