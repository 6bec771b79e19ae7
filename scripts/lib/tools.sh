# shellcheck shell=bash
# Everything that is installed beside Rust: one version each, kept in .tools and
# node_modules, used again when it is the right one.

TRUNK_VERSION=0.21.14
LEAST_NODE=20

# A tool that runs for a second is not worth minutes of optimising.
export_tool_profile() {
    export CARGO_PROFILE_RELEASE_LTO=off
    export CARGO_PROFILE_RELEASE_OPT_LEVEL=1
    export CARGO_PROFILE_RELEASE_CODEGEN_UNITS=16
    export CARGO_PROFILE_RELEASE_DEBUG=false
    unset CARGO_BUILD_TARGET RUSTFLAGS
}

# cargo_tool FOLDER CRATE VERSION [ARGUMENT...]: installs into .tools/FOLDER.
# The build folder outlives an interruption, so a second try is shorter.
cargo_tool() {
    local place=$TOOLS/$1 crate=$2 version=$3 fresh
    shift 3
    fresh=$place.fresh.$$
    rm -rf "$place".fresh.*
    (
        export_tool_profile
        cargo install "$crate" --version "=$version" "$@" --root "$fresh" --target-dir "$TOOLS/build/$crate"
    )
    rm -rf "$place"
    mv "$fresh" "$place"
    rm -rf "$TOOLS/build/$crate"
}

reports() { [ "$("$1" --version 2>/dev/null)" = "$2" ]; }

# The tool and the crate must be of the same version, so the lock file decides.
wasm_bindgen_version() {
    awk -F'"' '/^name = "wasm-bindgen"$/ {found = 1; next} found && /^version/ {print $2; exit}' "$ROOT/Cargo.lock"
}

setup_trunk_done() { reports "$TOOLS/trunk-$TRUNK_VERSION/bin/trunk" "trunk $TRUNK_VERSION"; }
setup_trunk() { cargo_tool "trunk-$TRUNK_VERSION" trunk "$TRUNK_VERSION" --locked --no-default-features; }

setup_wasm_bindgen_done() {
    local version
    version=$(wasm_bindgen_version)
    reports "$TOOLS/wasm-bindgen-$version/bin/wasm-bindgen" "wasm-bindgen $version"
}
setup_wasm_bindgen() {
    local version
    version=$(wasm_bindgen_version)
    [ -n "$version" ] || {
        say "Cargo.lock names no wasm-bindgen."
        return 1
    }
    cargo_tool "wasm-bindgen-$version" wasm-bindgen-cli "$version"
}

check_node() {
    if ! have node || ! have npm; then
        { have apt-get && can_be_root; } || die "node and npm are not on PATH." "install Node.js $LEAST_NODE or newer, then start again"
        say "Node.js is missing; installing it with apt-get."
        apt_install nodejs npm >"$LOGS/node.log" 2>&1 ||
            die "Node.js could not be installed (log: .tools/logs/node.log)." "install Node.js $LEAST_NODE or newer, then start again"
    fi
    local major
    major=$(node -p 'process.versions.node.split(".")[0]')
    ((major >= LEAST_NODE)) || die "Node.js $(node --version) is too old." "install Node.js $LEAST_NODE or newer, then start again"
}

# `npm ci` is not atomic; the copy of the lock file written after it is our proof that it ended.
NPM_STAMP=node_modules/.installed-from
setup_npm_done() { cmp -s package-lock.json "$NPM_STAMP"; }
setup_npm() {
    rm -f "$NPM_STAMP"
    PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm ci --no-audit --no-fund
    cp package-lock.json "$NPM_STAMP"
}

find_chromium() {
    local name
    for name in "${PENLIGHT_CHROMIUM:-}" chromium chromium-browser google-chrome google-chrome-stable \
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"; do
        [ -n "$name" ] && command -v "$name" && return 0
    done
    return 1
}
setup_chromium_done() { find_chromium; }
setup_chromium() {
    have apt-get || {
        say "No Chromium or Chrome found, and there is no apt-get to install one."
        return 1
    }
    apt_install chromium
    find_chromium
}

# The browser for automation that comes with Debian's WebKit.
find_webkit() {
    have WebKitWebDriver && have Xvfb || return 1
    compgen -G "${PENLIGHT_WEBKIT:-/usr/lib/*/webkit2gtk-4.1/MiniBrowser}"
}
setup_webkit_done() { find_webkit; }
setup_webkit() {
    have apt-get || {
        say "No WebKit for automation found, and there is no apt-get to install one."
        return 1
    }
    apt_install webkit2gtk-driver xvfb
    find_webkit
}

# --- Debian's packages -------------------------------------------------------

can_be_root() { [ "$(id -u)" = 0 ] || { have sudo && sudo -n true 2>/dev/null; }; }

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo -n "$@"; fi
}

apt_install() {
    local missing=() package
    for package in "$@"; do
        dpkg -s "$package" 2>/dev/null | grep -q '^Status: install ok installed' || missing+=("$package")
    done
    [ ${#missing[@]} = 0 ] && return 0
    can_be_root || {
        say "These packages are missing: ${missing[*]}. Installing them needs root or sudo without a password:"
        say "    sudo apt-get install --no-install-recommends ${missing[*]}"
        return 1
    }
    # Another installation may be running; wait for it instead of failing.
    local options=(-y -o DPkg::Lock::Timeout=300 --no-install-recommends)
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install "${options[@]}" "${missing[@]}" && return 0
    say "Perhaps the package lists are old. Refreshing them."
    as_root apt-get update
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install "${options[@]}" "${missing[@]}"
}
