// Pasteurisation: how long food of a thickness lies in a water bath until its middle is warm, and
// until the germs that matter in it are killed.
#pragma once

#include "core/base/result.h"
#include "core/science/estimate.h"
#include "core/science/heated_body.h"

namespace suppertide::science {

/// What a packet in a bath is like. The shape factors are those of Baldwin's tables, between the
/// ideal bodies: a roast is not a long cylinder (that would be a quarter too quick).
enum class PacketShape
{
    SlabLike,     // β 0
    CylinderLike, // β 0.7
    SphereLike,   // β 1.25
};

/// Minutes until the middle is `below` °C (0.1…10) under the bath (or above it, if it cools down).
/// mm 3…150, start −30…80 °C, bath 0…95 °C; a failure outside. α 1.4e-7 m²/s, h 95 W/(m²·K), k 0.48
/// W/(m·K); from frozen (below −2 °C) lean beef with its heat of melting. Range: α 1.1e-7…1.6e-7;
/// from frozen ± 20 %, which is how far the printed table lies from this model. Source: D. E.
/// Baldwin, Sous vide cooking: a review, Int. J. Gastronomy and Food Science 1 (2012) 15–30;
/// heating table of the web guide.
[[nodiscard]] Result<Estimate> timeInBath(PacketShape shape, double millimetres, double start,
                                          double bath, double below = 0.5);

enum class PasteurisedFood
{
    Meat,    // Listeria 6, Salmonella 6.5 and E. coli 5 decimal reductions in the middle
    Poultry, // Listeria 6
};

/// Minutes in the bath until the middle is pasteurised, from `start` °C (0…20). Bath 54.4…80 °C
/// (below that germs may grow), mm 3…100; a failure outside. α 1.11e-7 (poultry 1.08e-7) m²/s, h
/// 95, k 0.48, β 0 up to 30 mm and 0.28 above. Most: the larger of 20 % and 15 minutes more, which
/// is how far the printed tables lie from this model; safety goes by it. Source: as above,
/// pasteurisation tables and the note to Table 5.1; α, β from memory, checked by the tables.
[[nodiscard]] Result<Estimate> timeToPasteurise(PasteurisedFood food, double millimetres,
                                                double start, double bath);

} // namespace suppertide::science
