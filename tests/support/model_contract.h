// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractItemModel>
#include <QAbstractItemModelTester>
#include <QLoggingCategory>
#include <catch2/catch.hpp>
#include <memory>
#include <vector>

namespace spoilbook::test {

/// Runs `change` under Qt's own tester of item models, and requires that it had nothing to complain of. Its
/// warnings are collected: in its fatal mode it would end the program before the reason is printed.
inline void require_model_contract(const std::vector<QAbstractItemModel*>& models,
                                   const std::function<void()>& change) {
    static std::vector<std::string> said;
    said.clear();
    QLoggingCategory::setFilterRules(QStringLiteral("default.warning=false\nqt.modeltest=true"));
    const auto before = qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString& text) {
        said.push_back(text.toStdString());
    });
    {
        std::vector<std::unique_ptr<QAbstractItemModelTester>> testers;
        for (QAbstractItemModel* model : models) {
            testers.push_back(std::make_unique<QAbstractItemModelTester>(
                model, QAbstractItemModelTester::FailureReportingMode::Warning));
        }
        change();
    }
    qInstallMessageHandler(before);
    for (const std::string& text : said) {
        if (text.find("FAIL!") != std::string::npos) {
            UNSCOPED_INFO(text);
        }
    }
    REQUIRE(std::none_of(said.begin(), said.end(),
                         [](const std::string& text) { return text.find("FAIL!") != std::string::npos; }));
}

}  // namespace spoilbook::test
