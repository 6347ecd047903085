// Words typed freely, over as many lines as they take: grows with them and has no bars of its own.
#pragma once

#include <QPlainTextEdit>

namespace fayline::app {

class RemarksEdit : public QPlainTextEdit {
    Q_OBJECT
public:
    explicit RemarksEdit(const QString& object, QWidget* parent = nullptr);
    void show(const QString& words);  // what is there already stays, with the cursor in it

signals:
    void typed(const QString& words);

protected:
    bool event(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    void fitHeight();
};

}  // namespace fayline::app
