// SPDX-License-Identifier: GPL-3.0-or-later
#include <QLabel>
#include <QTableView>
#include <QVBoxLayout>

#include "forms/consent/standing_rows.h"
#include "forms/shared/table_view.h"

using namespace spoilbook;
using namespace spoilbook::form;

namespace {

StandingRow row(const char* what, const char* why, const char* load = "") {
    StandingRow row;
    row.what = QString::fromUtf8(what);
    row.why = QString::fromUtf8(why);
    row.load = QString::fromUtf8(load);
    return row;
}

/// A sheet as wide as the desk's.
struct JudgedSheet {
    explicit JudgedSheet(std::vector<StandingRow> rows) {
        ConditionStanding standing;
        standing.rows = std::move(rows);
        auto* all = new QVBoxLayout(&host);
        all->addWidget(standing_page(
            QStringLiteral("The bed lies no deeper than −9.9 m."), std::move(standing), [](const QString&) {},
            &host));
        host.resize(640, 600);
        host.show();
        REQUIRE(QTest::qWaitForWindowExposed(&host));
        view = host.findChild<TableView*>();
        for (auto* label : host.findChildren<QLabel*>()) {
            if (label->accessibleName() == QStringLiteral("why")) why = label;
        }
        REQUIRE(view != nullptr);
        REQUIRE(why != nullptr);
    }

    QWidget host;
    TableView* view = nullptr;
    QLabel* why = nullptr;
};

}  // namespace

TEST_CASE("the whole reason of the row under the cursor stands below what a condition was judged by",
          "[consent]") {
    const char* reason =
        "0.50 ± 0.07 m past it at most, at 711640.0 E 5497370.0 N, where the bed lies at -10.40 m; 12.3 % of "
        "its "
        "8874 m² is past it";
    JudgedSheet sheet({row("claim FB1 by survey SV-9", "short"), row("claim FB2 by survey SV-9", reason)});
    auto* table = sheet.view->table();
    QTest::mouseClick(table->viewport(), Qt::LeftButton, {},
                      table->visualRect(table->model()->index(1, 0)).center());
    CHECK(sheet.why->text() == QString::fromUtf8(reason));
    // Seen whole: it takes as many lines as it needs.
    CHECK(QTest::qWaitFor(
        [&] { return sheet.why->height() >= sheet.why->heightForWidth(sheet.why->width()); }));
    QTest::keyClick(table, Qt::Key_Up);
    CHECK(sheet.why->text() == QStringLiteral("short"));
}

TEST_CASE("loads have a column where a row has one", "[consent]") {
    const auto titles = [](JudgedSheet& sheet) {
        QStringList all;
        const auto* model = sheet.view->table()->model();
        for (int i = 0; i < model->columnCount(); ++i)
            all << model->headerData(i, Qt::Horizontal).toString();
        return all;
    };
    JudgedSheet without({row("claim FB1 by survey SV-9", "")});
    CHECK_FALSE(titles(without).contains(QStringLiteral("Load")));
    JudgedSheet with({row("trip T-7", "", "L-7"), row("trip T-8", "")});
    CHECK(titles(with).contains(QStringLiteral("Load")));
}
