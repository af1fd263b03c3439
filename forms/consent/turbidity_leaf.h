// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>

#include "forms/consent/turbidity_source.h"
#include "forms/works/figures_page.h"

class QLabel;
class QPushButton;
class QStackedWidget;
class QTabWidget;

namespace spoilbook::form {

class ChoiceField;
class Sheet;
class TableView;
class TimeField;
class TriggerSheet;

/// Is the water inside its triggers, and did we do it? Readings, levels, passed triggers and the work on one
/// time axis; below it the triggers with their clocks, completeness, and the readings of the window.
class TurbidityLeaf : public FiguresPage {
    Q_OBJECT

 public:
    /// `cache`: the file in which worked-out readings are kept; empty: nowhere.
    TurbidityLeaf(FiguresSource& source, std::string cache, QWidget* parent = nullptr);
    ~TurbidityLeaf() override;

    /// Opens the sheet that takes a logger's file in.
    void offer_file(const QString& path);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

 private:
    void build_head();
    QWidget* build_window_boxes();
    void build_chart();
    void build_tables();
    void fill_sites();
    [[nodiscard]] std::vector<std::string> sites_shown() const;
    void ask_view();
    void show_view(const ViewAnswer& answer);
    void ask_events();
    void show_events(EventsAnswer answer);
    void show_stands();
    void show_drawn();
    void open_event(int row);
    void open_bar(int bar);
    void open_flag();
    void write_drawing();

    std::string cache_;
    std::shared_ptr<TurbidityBook> book_;
    std::optional<Period> wanted_;  ///< the window that the person asked for
    bool at_work_ = false, again_ = false;
    ViewAnswer view_;
    EventsAnswer events_;
    std::vector<std::size_t> bar_rows_;  ///< of each bar, its row of the table

    ChoiceField* site_;
    TimeField *from_, *to_;
    StateMark* mark_;
    QLabel* sentence_;
    QLabel* note_;
    TurbidityChart* chart_;
    QStackedWidget* pages_;
    QTabWidget* tabs_;
    QPushButton* flag_;
    RowTable<ViewRow>* view_rows_ = nullptr;
    RowTable<TriggerRow>* trigger_rows_ = nullptr;
    RowTable<MonthRow>* month_rows_ = nullptr;
    RowTable<ReadingRow>* reading_rows_ = nullptr;
    TableView *numbers_, *triggers_, *months_, *readings_;
    Sheet* sheet_;
    QPointer<TriggerSheet> opened_;
    QThreadPool views_, searches_;  ///< one thread each: a plot does not wait for the search for events
};

}  // namespace spoilbook::form
