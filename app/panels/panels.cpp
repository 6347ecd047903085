#include "app/panels/along_plot.hpp"
#include "app/panels/form_panel.hpp"
#include "app/panels/glue_panel.hpp"
#include "app/panels/holding_panel.hpp"
#include "app/panels/line_panel.hpp"
#include "app/panels/panel.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/record_panel.hpp"
#include "app/panels/schedule_panel.hpp"
#include "app/panels/stock_panel.hpp"
#include "app/panels/strips_panel.hpp"

namespace fayline::app {

void Panel::dim(bool old) {
    for (AlongPlot* plot : findChildren<AlongPlot*>()) plot->setOld(old);
    for (SteadyWords* words : findChildren<SteadyWords*>()) words->setEnabled(!old);
}

std::vector<NamedPanel> makePanels(QWidget* parent) {
    return {{plan::Question::line, QObject::tr("Line"), new LinePanel(parent)},
            {plan::Question::strips, QObject::tr("Strips"), new StripsPanel(parent)},
            {plan::Question::form, QObject::tr("Form"), new FormPanel(parent)},
            {plan::Question::holding, QObject::tr("Holding"), new HoldingPanel(parent)},
            {plan::Question::glue, QObject::tr("Glue"), new GluePanel(parent)},
            {plan::Question::time, QObject::tr("Time"), new SchedulePanel(parent)},
            {plan::Question::stock, QObject::tr("Stock"), new StockPanel(parent)},
            {plan::Question::record, QObject::tr("Record"), new RecordPanel(parent)}};
}

}  // namespace fayline::app
