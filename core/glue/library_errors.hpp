// What the numerical library does about an error.
#pragma once

namespace fayline::glue {

// GSL aborts the program on an error unless told otherwise, and what it is told holds for all threads. To be called
// once as a program starts, before its threads: from then on GSL returns codes, which core/glue looks at.
void letLibraryReturnErrors();

}  // namespace fayline::glue
