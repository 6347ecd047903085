// The keys of the printed plan about boards: which gives which strip, where the scarfs lie. print_rules.hpp says how a
// table is walked.
#pragma once

#include "core/export/print_rules.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/stock_study.hpp"

namespace fayline::plan::printing {

inline constexpr Figure kg{{"kg"}, 3};
inline constexpr Figure m3{{"m3"}, 6};
inline constexpr Figure money{{}, 2};

void printedKeys(auto& visit, const SawnPart*) {
    visit("place", &SawnPart::place, Whole{});
    visit("part", &SawnPart::part, Whole{});
    visit("parts", &SawnPart::parts, Whole{});
    visit("from_mm", &SawnPart::from_m, mm);
    visit("length_mm", &SawnPart::length_m, mm);
    visit("rip", &SawnPart::rip, Whole{});
    visit("across_from_mm", &SawnPart::acrossFrom_m, mm);
    visit("across_to_mm", &SawnPart::acrossTo_m, mm);
    visit("deep_from_mm", &SawnPart::deepFrom_m, mm);
    visit("deep_to_mm", &SawnPart::deepTo_m, mm);
    visit("scarf_at_start", &SawnPart::scarfAtStart, Truth{});
    visit("scarf_at_end", &SawnPart::scarfAtEnd, Truth{});
    visit("spare", &SawnPart::spare, Truth{});
    visit("faulty", &SawnPart::faulty, Truth{});
    visit("pinned", &SawnPart::pinned, Truth{});
    visit("cut", &SawnPart::cut, Truth{});
    visit("lost", &SawnPart::lost, Truth{});
    visit("piece", &SawnPart::piece, OrAbsent<Text>{});
}

void printedKeys(auto& visit, const BoardCuts*) {
    visit("name", &BoardCuts::name, Text{});
    visit("number", &BoardCuts::number, Whole{});
    visit("to_buy", &BoardCuts::toBuy, Truth{});
    visit("sawn", &BoardCuts::ofFace, words<bool>({{false, "edge"}, {true, "face"}}));
    visit("strips", &BoardCuts::parts, ListOf<Group>{});
    visit("waste_pct", ifAny(where([](const BoardCuts& board) { return !board.parts.empty(); }), &BoardCuts::waste),
          OrNull{pct});
    visit("price", &BoardCuts::price, money);
}

void printedKeys(auto& visit, const ScarfPlace*) {
    visit("place", &ScarfPlace::place, Whole{});
    visit("at_mm", &ScarfPlace::at_m, mm);
    visit("length_mm", &ScarfPlace::length_m, mm);
    visit("in_tightest_third", &ScarfPlace::inTightest, Truth{});
}

void printedKeys(auto& visit, const StockCure*) {
    visit(
        "what", [](const StockCure& cure, const Of& of) { return writeText(cure.name, of.shop.display); }, Text{});
    visit("short_by", &StockCure::stillShort, Whole{});
    visit("price", &StockCure::cost, OrNull{money});
    visit("volume_m3", &StockCure::extra_m3, m3);
}

void printedKeys(auto& visit, const StockStudy*) {
    constexpr auto given = where(&StockStudy::anyBoards);
    constexpr auto missing = [](const StockStudy& study) { return static_cast<int>(study.missing.size()); };
    visit("strips_needed", &StockStudy::stripsNeeded, Whole{});
    visit("spares", &StockStudy::spares, Whole{});
    visit("already_cut", &StockStudy::alreadyCut, Whole{});
    visit("boards", &StockStudy::boards, ListOf<Group>{});
    visit("short_by", ifAny(given, missing), OrNull<Whole>{});
    visit("missing", &StockStudy::missing, ListOf<Whole>{});
    visit("scarfs", &StockStudy::scarfs, ListOf<Group>{});
    visit("proven_best", ifAny(given, &StockStudy::proven), OrNull<Truth>{});
    visit("off_best_pct", ifAny(given, &StockStudy::offBest), OrNull{pct});
    visit("waste_pct", ifAny(given, &StockStudy::waste), OrNull{pct});
    visit("waste_off_edge_pct", &StockStudy::edgeWaste, OrNull{pct});
    visit("waste_off_face_pct", &StockStudy::faceWaste, OrNull{pct});
    visit("price", ifAny(given, &StockStudy::price), OrNull{money});
    visit("price_to_buy", ifAny(given, &StockStudy::toSpend), OrNull{money});
    visit("weight_kg", ifAny(given, &StockStudy::weight_kg), OrNull{kg});
    visit("volume_m3", ifAny(given, &StockStudy::volume_m3), OrNull{m3});
    visit("board_feet", ifAny(given, &StockStudy::boardFeet), OrNull{money});
    visit("cures", &StockStudy::cures, ListOf<Group>{});
    visit(
        "wrong", [](const StockStudy& study, const Of& of) { return writeTexts(study.told, of.shop.display); },
        OrAbsent<Text>{});
}

}  // namespace fayline::plan::printing
