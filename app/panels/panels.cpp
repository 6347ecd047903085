#include "app/panels/form_panel.hpp"
#include "app/panels/holding_panel.hpp"
#include "app/panels/line_panel.hpp"
#include "app/panels/panel.hpp"
#include "app/panels/strips_panel.hpp"

namespace fayline::app {

std::vector<NamedPanel> makePanels(QWidget* parent) {
    return {{plan::Question::line, QObject::tr("Line"), new LinePanel(parent)},
            {plan::Question::strips, QObject::tr("Strips"), new StripsPanel(parent)},
            {plan::Question::form, QObject::tr("Form"), new FormPanel(parent)},
            {plan::Question::holding, QObject::tr("Holding"), new HoldingPanel(parent)}};
}

}  // namespace fayline::app
