# Which Debian packages building and testing need; sourced by app/run and tests/run.

build_packages=(g++ cmake ninja-build ccache pkg-config
    qt6-base-dev libqt6opengl6-dev qt6-charts-dev qt6-svg-dev
    libsqlite3-dev libsqlitecpp-dev libspdlog-dev nlohmann-json3-dev
    libhowardhinnant-date-dev tzdata fonts-dejavu-core)
test_packages=(libgtest-dev libgmock-dev libvalijson-dev libz3-dev poppler-utils units)
gate_packages=(clang-format-14 git)
nightly_packages=(clang-tidy-14 gcovr libbenchmark-dev xvfb xauth python3-jsonschema)

# install_missing WHY PACKAGE…: says what is missing and why, then installs it; silent if all is there.
install_missing() {
    local why=$1 package missing=() sudo=()
    shift
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'install ok installed' ||
            missing+=("$package")
    done
    ((${#missing[@]})) || return 0
    echo "$why needs these Debian packages, which will now be installed:"
    printf '  %s\n' "${missing[@]}"
    if [ "$(id -u)" != 0 ]; then
        command -v sudo >/dev/null || {
            echo "There is no sudo here: become root and run: apt-get install ${missing[*]}" >&2
            exit 1
        }
        sudo=(sudo)
    fi
    "${sudo[@]}" apt-get update -q
    "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -q --no-install-recommends "${missing[@]}"
}
