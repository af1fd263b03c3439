// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>
#include <QTest>
#include <catch2/catch.hpp>

#include "forms/shared/text_field.h"

namespace spoilbook::tests {

/// The box of a record's sheet that bears a label.
inline form::TextField* field_of(const QWidget& sheet, const char* label) {
    for (auto* one : sheet.findChildren<form::TextField*>()) {
        if (one->label() == QString::fromLatin1(label)) return one;
    }
    FAIL("no field " << label);
    return nullptr;
}

/// Types over what stands in it, and leaves it by Enter.
inline void type_into(form::TextField* into, const char* keys) {
    auto* edit = into->findChild<QLineEdit*>();
    edit->setFocus();
    edit->selectAll();
    QTest::keyClicks(edit, QString::fromUtf8(keys));
    QTest::keyClick(edit, Qt::Key_Return);
}

}  // namespace spoilbook::tests
