# shellcheck shell=bash
# Python with numpy and scipy, which our statistics are compared with. Nothing of it is in the app.
#
# A Python environment of our own under .tools; the Python on PATH stays as it is.

PYTHONS="3.9 to 3.14"

# The versions for a Python version: a pair that is there ready-made, nothing is compiled.
python_pins() {
    case $1 in
    3.9) say "numpy==2.0.2 scipy==1.13.1" ;;
    3.10 | 3.11 | 3.12 | 3.13) say "numpy==2.2.6 scipy==1.15.3" ;;
    3.14) say "numpy==2.3.5 scipy==1.16.3" ;;
    *) return 1 ;;
    esac
}

# Prints the path and version of a Python that can make an environment.
find_python() {
    local name version
    # Debian's own is asked by its path too: another python3 may stand before it.
    for name in "${PENLIGHT_PYTHON:-}" python3 /usr/bin/python3; do
        { [ -n "$name" ] && have "$name"; } || continue
        # Without `ensurepip`, which Debian packages apart, an environment has no pip.
        version=$("$name" -I -c 'import ensurepip, venv, sys; print("%d.%d" % sys.version_info[:2])' 2>/dev/null) || continue
        python_pins "$version" >/dev/null || continue
        say "$(command -v "$name") $version"
        return 0
    done
    return 1
}

# A new Python or new pins get a new folder.
python_home() {
    local found pins
    found=$(find_python) || return 1
    pins=$(python_pins "${found##* }")
    pins=${pins//==/-}
    printf '%s\n' "$TOOLS/python-${found##* }-${pins// /-}"
}

# pip is not atomic; the file written after it is our proof that it ended.
setup_python_done() {
    local home
    home=$(python_home) && [ -f "$home/.installed" ] && "$home/bin/python" -I -c 'import numpy, scipy'
}

setup_python() {
    local found python version home pins
    find_python >/dev/null || install_debian_python
    found=$(find_python) || {
        say "No Python $PYTHONS with venv was found."
        return 1
    }
    python=${found% *} version=${found##* }
    home=$(python_home)
    read -ra pins <<<"$(python_pins "$version")"
    rm -rf "$TOOLS"/python-*
    "$python" -I -m venv "$home"
    "$home/bin/python" -I -m pip install --disable-pip-version-check --no-input --only-binary :all: "${pins[@]}"
    : >"$home/.installed"
}

install_debian_python() {
    have apt-get || {
        say "There is no Python $PYTHONS with venv here, and no apt-get to install one."
        return 1
    }
    apt_install python3 python3-venv
}
