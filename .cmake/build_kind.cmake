# One option, SUPPERTIDE_BUILD, picks how everything is compiled.
set(suppertide_warnings
    -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wshadow -Wold-style-cast
    -Wcast-qual -Wnon-virtual-dtor -Woverloaded-virtual -Wdouble-promotion -Wformat=2
    -Wmissing-declarations
    # Designated initialisers leave the rest at its default on purpose.
    -Wno-missing-field-initializers)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    list(APPEND suppertide_warnings -Wuseless-cast -Wduplicated-cond -Wlogical-op)
endif()
if(SUPPERTIDE_WERROR)
    list(APPEND suppertide_warnings -Werror)
endif()

set(CMAKE_BUILD_TYPE "" CACHE STRING "Unused: see SUPPERTIDE_BUILD" FORCE)
if(SUPPERTIDE_BUILD STREQUAL "dev")
    add_compile_options(-O1 -g1)
elseif(SUPPERTIDE_BUILD STREQUAL "asan")
    add_compile_options(-O1 -g1 -fno-omit-frame-pointer -Wno-error=maybe-uninitialized -fsanitize=address,undefined
                        -fno-sanitize-recover=all)
    add_link_options(-fsanitize=address,undefined)
elseif(SUPPERTIDE_BUILD STREQUAL "tsan")
    add_compile_options(-O1 -g1 -fsanitize=thread)
    add_link_options(-fsanitize=thread)
elseif(SUPPERTIDE_BUILD STREQUAL "coverage")
    add_compile_options(-O0 -g --coverage)
    add_link_options(--coverage)
elseif(SUPPERTIDE_BUILD STREQUAL "release")
    add_compile_options(-O3)
    # g++ 12 with -O3 sees use of the parts that a variant or an optional does not hold, and copies of
    # 2^62 bytes in std::string::replace (GCC bug 105651).
    list(APPEND suppertide_warnings -Wno-maybe-uninitialized -Wno-restrict)
else()
    message(FATAL_ERROR "SUPPERTIDE_BUILD is '${SUPPERTIDE_BUILD}'; "
                        "expected dev, asan, tsan, coverage or release")
endif()

# lld links several times faster than GNU ld; it is only used where it is there.
find_program(LLD_PROGRAM NAMES ld.lld)
if(LLD_PROGRAM)
    add_link_options(-fuse-ld=lld)
endif()
