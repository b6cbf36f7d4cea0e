// SUPPERTIDE_WIDE: before a function whose loops are worth the widest registers that the processor
// has; it is chosen as the program starts.
#pragma once

// Sanitizers cannot be asked for the processor that early.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) &&                             \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define SUPPERTIDE_WIDE __attribute__((target_clones("avx512f", "avx2", "default")))
#else
#define SUPPERTIDE_WIDE
#endif
