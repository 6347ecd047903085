#include "app/paper/verdict_lines.hpp"

namespace fayline::app::paper {

namespace {

constexpr double verdictSize_mm = 4.2;
constexpr double causeSize_mm = 3;
constexpr int mostCauses = 3;

bool comesFirst(const plan::Finding& finding) {
    return plan::isCause(finding) && finding.severity != plan::Severity::note;
}

}  // namespace

std::vector<Paragraph> verdictLines(const plan::Plan& plan) {
    std::vector<Paragraph> lines{
        {QString::fromStdString(plan::writeText(plan::verdictOf(plan).text, plan.display)), verdictSize_mm, true}};
    int causes = 0;
    for (const plan::Finding& finding : plan.findings) {
        if (!comesFirst(finding) || ++causes > mostCauses) continue;
        const QString severity = finding.severity == plan::Severity::stop ? "Stop: " : "Caution: ";
        lines.push_back({severity + QString::fromStdString(plan::textOf(finding, plan.display)), causeSize_mm});
    }
    if (causes > mostCauses) lines.push_back({QString("and %1 more").arg(causes - mostCauses), causeSize_mm});
    return lines;
}

}  // namespace fayline::app::paper
