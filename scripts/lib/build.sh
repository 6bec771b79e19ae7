# shellcheck shell=bash
# Set-up and release build, as `run` and `test` both need them.

. "$(dirname "${BASH_SOURCE[0]}")/common.sh"
. "$(dirname "${BASH_SOURCE[0]}")/rust.sh"
. "$(dirname "${BASH_SOURCE[0]}")/tools.sh"

plan_build_setup() {
    plan setup_wasm_std "Rust's standard library for the browser" "10 s; 1 min where rustup can't"
    plan setup_trunk "trunk $TRUNK_VERSION, which builds the app" "3 min"
    plan setup_wasm_bindgen "wasm-bindgen $(wasm_bindgen_version), which joins Rust and JavaScript" "1 min"
    plan setup_npm "npm packages: wasm-opt and the browser tests" "5 s"
}

plan_build() {
    plan build_release "Release build into dist/" "1 min the first time, 20 s later"
}

build_release() {
    local bindgen
    bindgen=$TOOLS/wasm-bindgen-$(wasm_bindgen_version)
    use_wasm_rust
    # Ours first: another wasm-bindgen or wasm-opt on this machine may not fit.
    export PATH="$TOOLS/trunk-$TRUNK_VERSION/bin:$bindgen/bin:$ROOT/node_modules/.bin:$PATH"
    # trunk takes NO_COLOR only as true or false, and some machines set it to 1.
    export NO_COLOR=true
    # trunk runs cargo without network, so that what it needs must be here before.
    cargo fetch --locked --target "$WASM_TARGET"
    trunk build --release --locked
}
