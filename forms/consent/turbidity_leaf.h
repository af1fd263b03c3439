// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>

#include "forms/consent/folder_taker.h"
#include "forms/consent/turbidity_source.h"
#include "forms/works/figures_page.h"

class QBoxLayout;
class QHBoxLayout;
class QLabel;
class QPushButton;
class QStackedWidget;
class QTabWidget;

namespace spoilbook::form {

class BusyOverlay;
class ChoiceField;
class InstrumentsPart;
class Sheet;
class TableView;
class ThresholdsPart;
class TimeField;
class TriggerSheet;

/// The folder that a book's loggers' files are put into, as the program remembers it.
struct FolderMemory {
    QString folder = {};
    std::function<void(const QString& folder)> keep = {};
};

/// Is the water inside its triggers, and did we do it? Readings, levels, passed triggers and the work on one
/// time axis; below it the triggers with their clocks, completeness, and the readings of the window.
class TurbidityLeaf : public FiguresPage {
    Q_OBJECT

 public:
    /// `cache`: the file in which worked-out readings are kept; empty: nowhere.
    TurbidityLeaf(FiguresSource& source, std::string cache, FolderMemory memory = {},
                  QWidget* parent = nullptr);
    ~TurbidityLeaf() override;

    /// Takes in what appears in a folder from now on; empty: no longer.
    void watch_folder(const QString& folder);
    [[nodiscard]] FolderTaker& taker() const { return *taker_; }
    /// Opens the sheet that takes a logger's file in.
    void offer_file(const QString& path);

 protected:
    void show_figures(const FiguresMade& figures) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

 private:
    void build_head();
    void add_takers(QHBoxLayout* row, QWidget* parent);
    QWidget* build_window_boxes();
    void build_chart();
    void build_tables();
    void fill_sites();
    void wait_for_first();
    void tell_empty();
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
    void open_solids();
    void write_sample(const QString& site);
    void show_instruments();
    void write_drawing();

    std::string cache_;
    FolderMemory memory_;
    std::shared_ptr<TurbidityBook> book_;
    std::optional<Period> wanted_;  ///< the window that the person asked for
    bool at_work_ = false, again_ = false;
    ViewAnswer view_;
    EventsAnswer events_;
    std::vector<std::size_t> bar_rows_;  ///< of each bar, its row of the table

    QBoxLayout *head_, *tools_;  ///< what stands abreast, or at a large scale below one another
    ChoiceField* site_;
    TimeField *from_, *to_;
    StateMark* mark_;
    QLabel* sentence_;
    QLabel* note_;
    TurbidityChart* chart_;
    QStackedWidget* pages_;
    QTabWidget* tabs_;
    QPushButton* flag_;
    InstrumentsPart* instruments_;
    ThresholdsPart* thresholds_;
    RowTable<ViewRow>* view_rows_ = nullptr;
    RowTable<TriggerRow>* trigger_rows_ = nullptr;
    RowTable<MonthRow>* month_rows_ = nullptr;
    RowTable<ReadingRow>* reading_rows_ = nullptr;
    TableView *numbers_, *triggers_, *months_, *readings_;
    BusyOverlay *reading_, *looking_;  ///< over plot and triggers until their first answer
    Sheet* sheet_;
    FolderTaker* taker_;
    QPointer<TriggerSheet> opened_;
    QThreadPool views_, searches_, files_;  ///< one thread each: none waits for another
};

}  // namespace spoilbook::form
