// One finding as a line that opens.
#pragma once

#include <QPushButton>
#include <QToolButton>
#include <QWidget>
#include <optional>

#include "app/look/shown.hpp"

namespace fayline::app {

class SteadyWords;

class FindingLine : public QWidget {
    Q_OBJECT
public:
    explicit FindingLine(const QString& object, QWidget* parent = nullptr);

    // What the line says; `cure` on its button, empty: none. `opens`: whether it has more to say; `detail` is that,
    // once it is open.
    void say(plan::Severity severity, const QString& line, const QString& cure, bool opens, bool open,
             const QString& detail);
    void setPlace(std::optional<double> at_m) { at_m_ = at_m; }
    std::optional<double> place() const { return at_m_; }
    QWidget* lastInside() const { return open_; }  // that the tab key comes to

signals:
    void chosen();
    void openAsked();
    void cureAsked();
    void hovered(std::optional<double> at_m);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    plan::Severity severity_ = plan::Severity::note;
    std::optional<double> at_m_;
    SteadyWords* line_;
    SteadyWords* detail_;
    QToolButton* open_;
    QPushButton* cure_;
};

}  // namespace fayline::app
