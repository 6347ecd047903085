// A written length taken apart into signs, numbers and marks, before anyone asks what they mean together.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fayline::units {

enum class TokenKind { number, slash, dash, plus, footMark, inchMark, word };

struct Token {
    TokenKind kind = TokenKind::number;
    std::string text;  // as written, after typographic signs were put into plain ones; words in lower case

    bool is(TokenKind other) const { return kind == other; }
};

// The tokens of `text` in order; blank space between them is dropped. Typographic signs (prime marks, curly quotes,
// fractions such as the one for a half, long dashes, hard spaces) come as the plain tokens they stand for.
// Throws InputError with an empty path for empty or overlong text and for a sign that no length holds.
std::vector<Token> lengthTokens(std::string_view text);

}  // namespace fayline::units
