// Papers of one piece as PDF files in a folder of the test's own.
#pragma once

#include <QPrinter>
#include <QTemporaryDir>

#include "app/paper/papers.hpp"
#include "tests/app/paper_boats.hpp"

namespace fayline::test {

class PdfPrinter {
protected:
    // The name of the file.
    QString print(app::Paper paper, const model::Piece& piece, const plan::Plan& plan,
                  const QPageLayout& layout = layoutOf(QPageSize(QPageSize::A4))) {
        const QString file = folder_.filePath(QString("paper %1.pdf").arg(++used_));
        QPrinter printer(QPrinter::HighResolution);
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(file);
        printer.setPageLayout(layout);
        app::printPaper(paper, boatOf({piece}), piece, plan, printer);
        return file;
    }

private:
    QTemporaryDir folder_;
    int used_ = 0;
};

}  // namespace fayline::test
